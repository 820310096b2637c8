/** What a page says to the service worker. */
export type PageMessage =
  | { readonly type: "isEverythingKept" }
  | { readonly type: "takeOver" }
  | { readonly type: "pageStarted" }
  | { readonly type: "deskOpened" }
  | { readonly type: "whatIsNew" };

/** The service worker's answer to isEverythingKept. */
export interface KeptAnswer {
  readonly kept: boolean;
}

/** The answer of a service worker to whatIsNew: what its release brings. */
export interface ChangesAnswer {
  readonly changes: readonly string[];
}

/** By this name the browser is asked to send what waits for the desk, also with no page open. */
export const syncTag = "stopfit-outbox";
/** One page or worker at a time sends. */
export const outboxLock = "stopfit-outbox";
