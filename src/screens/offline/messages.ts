/** What a page says to the service worker. */
export type PageMessage =
  | { readonly type: "isEverythingKept" }
  | { readonly type: "takeOver" }
  | { readonly type: "pageStarted" }
  | { readonly type: "whatIsNew" };

/** The service worker's answer to isEverythingKept. */
export interface KeptAnswer {
  readonly kept: boolean;
}

/** The answer of a service worker to whatIsNew: what its release brings. */
export interface ChangesAnswer {
  readonly changes: readonly string[];
}
