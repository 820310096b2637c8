interface ImportMetaEnv {
  /** The version of the app, set by the build. */
  readonly VITE_RELEASE: string;
}
