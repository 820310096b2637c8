interface ImportMetaEnv {
  /** The version of the app, set by the build. */
  readonly VITE_RELEASE: string;
  /** The desk that this build sends to, as STOPFIT_DESK named it; empty where there is none. */
  readonly VITE_DESK: string;
  /** The pack that a maker's build ships, its digest, the maker and the logo; empty: the demonstration's. */
  readonly VITE_PACK_FILE?: string;
  readonly VITE_PACK_DIGEST?: string;
  readonly VITE_PACK_MAKER?: string;
  readonly VITE_PACK_LOGO?: string;
}
