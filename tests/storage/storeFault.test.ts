import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import {
  faultOf,
  isClosedHandle,
  isRefusedOpening,
  storeFault,
} from "../../src/storage/storeFault.ts";

const error = (name: string) => Object.assign(new Error("from the browser"), { name });
const told = (cause: unknown) => inModelUnits(faultOf(cause).sentence);

describe("a fault of the browser's storage", () => {
  it.each([
    [
      ["SecurityError", "NotAllowedError", "InvalidAccessError"],
      "storeRefused",
      "Not saved: this browser refuses to store anything here, as in a private window. Save the check as a file before you close this page.",
    ],
    [
      ["QuotaExceededError", "NS_ERROR_DOM_QUOTA_REACHED"],
      "storeFull",
      "Not saved: the storage of this phone is full. Save the check as a file, then free some space and try again.",
    ],
    [
      ["VersionError"],
      "storeNewer",
      "Not saved: a newer version of Stopfit has been used on this phone. Load this page again to get it, and save the check as a file first.",
    ],
    [
      ["TimeoutError"],
      "storeSilent",
      "Not saved: the storage of this phone does not answer. Save the check as a file, then load this page again.",
    ],
    [
      ["DataError", "AbortError", ""],
      "storeFailed",
      "Not saved: the storage of this phone reported a fault. Save the check as a file.",
    ],
  ] as const)("%j is told as %s, with what to do", (names, code, words) => {
    for (const name of names) {
      expect(faultOf(error(name)).code).toBe(code);
      expect(told(error(name))).toBe(words);
      // What browsers throw need not be an Error.
      expect(told({ name })).toBe(words);
    }
  });

  it("without a name is a fault all the same", () => {
    for (const cause of [null, undefined, "VersionError", 5, {}, { name: null }]) {
      expect(faultOf(cause).code).toBe("storeFailed");
    }
  });

  it("that only the app itself can tell says what to do as well", () => {
    const words = (code: "storeBlocked" | "storeGone") => inModelUnits(storeFault(code).sentence);
    expect(words("storeBlocked")).toBe(
      "Not saved: Stopfit is open in another tab with an older version. Close the other tab and try again.",
    );
    expect(words("storeGone")).toBe(
      "Not saved: this check is no longer on this phone. Save it as a file.",
    );
  });
});

describe("a database that was closed under us", () => {
  it("is told from one that refuses, and opened again", () => {
    const closed = ["InvalidStateError", "AbortError", "TransactionInactiveError", "UnknownError"];
    for (const name of closed) expect(isClosedHandle(error(name))).toBe(true);
    for (const name of ["QuotaExceededError", "VersionError", ""]) {
      expect(isClosedHandle(error(name))).toBe(false);
    }
    expect(isClosedHandle(null)).toBe(false);
  });

  it("as it is opened is how a private window refuses", () => {
    expect(isRefusedOpening(error("InvalidStateError"))).toBe(true);
    expect(isRefusedOpening(error("AbortError"))).toBe(false);
    expect(isRefusedOpening(undefined)).toBe(false);
  });
});
