interface ImportMetaEnv {
  /** The version of the app, set by the build. */
  readonly VITE_RELEASE: string;
  /** The desk that this build sends to, as STOPFIT_DESK named it; empty where there is none. */
  readonly VITE_DESK: string;
}
