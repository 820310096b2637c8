import type { Fault } from "../physics/outcome.ts";

/** Why the phone did not keep something. */
export type StoreFaultCode =
  | "storeRefused"
  | "storeFull"
  | "storeBlocked"
  | "storeNewer"
  | "storeSilent"
  | "storeGone"
  | "storeFailed";

const sentences: { readonly [Code in StoreFaultCode]: string } = {
  storeRefused:
    "Not saved: this browser refuses to store anything here, as in a private window. Save the check as a file before you close this page.",
  storeFull:
    "Not saved: the storage of this phone is full. Save the check as a file, then free some space and try again.",
  storeBlocked:
    "Not saved: Stopfit is open in another tab with an older version. Close the other tab and try again.",
  storeNewer:
    "Not saved: a newer version of Stopfit has been used on this phone. Load this page again to get it, and save the check as a file first.",
  storeSilent:
    "Not saved: the storage of this phone does not answer. Save the check as a file, then load this page again.",
  storeGone: "Not saved: this check is no longer on this phone. Save it as a file.",
  storeFailed: "Not saved: the storage of this phone reported a fault. Save the check as a file.",
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
