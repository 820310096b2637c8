/** What a page says to the service worker. */
export type PageMessage =
  | { readonly type: "isEverythingKept" }
  | { readonly type: "takeOver" }
  | { readonly type: "pageStarted" };

/** The service worker's answer to isEverythingKept. */
export interface KeptAnswer {
  readonly kept: boolean;
}
