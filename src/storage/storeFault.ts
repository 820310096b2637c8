import type { Fault } from "../physics/outcome.ts";
import * as messages from "../words/compiled/storage.ts";
import type { Message } from "../words/message.ts";

/** Why the phone did not keep something. */
export type StoreFaultCode =
  | "storeRefused"
  | "storeFull"
  | "storeBlocked"
  | "storeNewer"
  | "storeSilent"
  | "storeGone"
  | "storeFailed";

const sentences: { readonly [Code in StoreFaultCode]: Message } = {
  storeRefused: messages.notSavedThisBrowser,
  storeFull: messages.notSavedStorageOf,
  storeBlocked: messages.notSavedStopfitIs,
  storeNewer: messages.notSavedNewerVersion,
  storeSilent: messages.notSavedStorageOfThis,
  storeGone: messages.notSavedThisCheck,
  storeFailed: messages.notSavedStorageOfThisPhone,
};

export function storeFault(code: StoreFaultCode): Fault {
  return { code, sentence: [sentences[code]] };
}

function nameOf(error: unknown): string {
  return typeof error === "object" && error !== null && "name" in error ? String(error.name) : "";
}

const closedHandle: readonly string[] = [
  "InvalidStateError",
  "AbortError",
  "TransactionInactiveError",
  // Where the browser's own storage process has gone, handles end with this.
  "UnknownError",
];

/** The database handle has been closed under us: worth opening again and repeating the work once. */
export function isClosedHandle(error: unknown): boolean {
  return closedHandle.includes(nameOf(error));
}

/** An opening that fails as "invalid state" is how some browsers refuse a private window. */
export function isRefusedOpening(error: unknown): boolean {
  return nameOf(error) === "InvalidStateError";
}

/** What a browser's storage error means for the person. */
export function faultOf(error: unknown): Fault {
  switch (nameOf(error)) {
    case "SecurityError":
    case "NotAllowedError":
    case "InvalidAccessError":
      return storeFault("storeRefused");
    case "QuotaExceededError":
    case "NS_ERROR_DOM_QUOTA_REACHED":
      return storeFault("storeFull");
    case "VersionError":
      return storeFault("storeNewer");
    case "TimeoutError":
      return storeFault("storeSilent");
    default:
      return storeFault("storeFailed");
  }
}
