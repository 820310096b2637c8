import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { ReadingId } from "../../src/physics/readings/readingId.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { stepHref } from "../../src/screens/addresses.ts";
import { entryRemarks } from "../../src/screens/check/remarks.ts";
import { checkFileName } from "../../src/screens/checkFile.ts";
import {
  changePreferences,
  forgetPreferencesInMemory,
  preferences,
} from "../../src/screens/preferences.ts";
import { addressOf } from "../../src/screens/screen.tsx";
import * as screens from "../../src/screens/screenList.ts";
import { placeAt } from "../../src/screens/screens.tsx";

describe("the address", () => {
  it("leads back to the very id and step it was made of", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.string({ minLength: 1 }), (id, step) => {
        fc.pre(step !== "answer" && step !== "stops");
        expect(placeAt(stepHref(id, step)).route).toEqual({ screen: "step", id, step });
      }),
    );
  });

  it.each([
    ["", "checks"],
    ["#/", "checks"],
    ["#/check/a", "step"],
    ["#/check/a/left.limits.0", "step"],
    ["#/check/a/answer", "answer"],
    ["#/check/a/stops", "stops"],
    ["#/taller", "quickCheck"],
    ["#/taller/answer", "quickCheck"],
    ["#/pack/stop/new", "pack"],
    ["#/saved", "saved"],
    ["#/kept", "saved"],
    ["#/looks", "settings"],
    ["#/desk/check/a", "desk"],
    ["#/desk/elsewhere", "unknown"],
    ["#/reply/a", "reply"],
    ["#/open/x/y", "open"],
    ["#/scan", "scan"],
    ["#/received", "received"],
    ["#/check", "unknown"],
    ["#/check/a/b/c", "unknown"],
    ["#/check/a/%E0%A4%A", "unknown"],
    ["#/elsewhere", "unknown"],
  ])("%s shows %s", (hash, screen) => {
    expect(placeAt(hash).route.screen).toBe(screen);
    const known = Object.values(screens).filter((screenAt) => screenAt(addressOf(hash)) !== null);
    expect(known).toHaveLength(screen === "unknown" ? 0 : 1);
  });
});

describe("preferences", () => {
  beforeEach(() => {
    localStorage.clear();
    forgetPreferencesInMemory();
  });
  afterEach(() => vi.restoreAllMocks());

  it("are there again after a reload", () => {
    changePreferences({ length: "in", author: { role: "customer", name: "Ada" } });
    forgetPreferencesInMemory();
    expect(preferences()).toMatchObject({
      length: "in",
      author: { role: "customer", name: "Ada" },
    });
  });

  it.each(["", "{", "null", "7", '{"length":"furlong","author":{"role":"king"}}'])(
    "fall back where %s is kept",
    (text) => {
      localStorage.setItem("stopfit.preferences", text);
      const { length, author } = preferences();
      expect(["mm", "in"]).toContain(length);
      expect(author).toBeUndefined();
    },
  );

  it("hold until the page is closed where the browser keeps nothing", () => {
    vi.spyOn(Storage.prototype, "setItem").mockImplementation(() => {
      throw new DOMException("refused", "SecurityError");
    });
    vi.spyOn(Storage.prototype, "getItem").mockImplementation(() => {
      throw new DOMException("refused", "SecurityError");
    });
    changePreferences({ length: "in" });
    expect(preferences().length).toBe("in");
  });
});

describe("what is said of a reading", () => {
  const stored = newStoredCheck();
  const tones = (id: ReadingId, texts: readonly string[], unit: "mm" | "in", tol = "") =>
    entryRemarks(stored, id, { texts, unit, tol }).map(({ tone, fix }) => fix ?? tone);

  it("is nothing while it is empty or believable", () => {
    expect(tones("left.gap", [""], "mm")).toEqual([]);
    expect(tones("left.gap", ["21", "22"], "mm")).toEqual([]);
  });

  it("names the unit that was probably meant", () => {
    expect(tones("pivotToOuter", ["16.2"], "mm")).toEqual(["in"]);
    expect(tones("pivotToOuter", ["411"], "in")).toEqual(["mm"]);
  });

  it("asks about what is hardly ever seen, in either unit", () => {
    expect(tones("pivotToOuter", ["9000"], "mm")).toEqual(["unsure"]);
    expect(tones("armAngle", ["60"], "mm")).toEqual(["unsure"]);
  });

  // Repeats that scatter more than three times the tolerance: the computation model, section 6.
  it("asks about repeats only beyond three times the ±", () => {
    expect(tones("left.gap", ["20", "23"], "mm", "1")).toEqual([]);
    expect(tones("left.gap", ["20", "23.1"], "mm", "1")).toEqual(["unsure"]);
    expect(tones("left.gap", ["20", "30"], "mm", "0")).toEqual([]);
  });

  it("is the sentence of what can't be read, and the reading is not taken", () => {
    expect(tones("left.gap", ["2 7/0"], "mm")).toEqual(["no"]);
    const typed = setEntry(stored, "left.gap", { texts: ["2 7/0"], unit: "mm", tol: "" });
    expect(typed.record.corners[0]?.gap).toBeUndefined();
  });
});

describe("the name of a file", () => {
  it("is one that every file system takes, whatever the check is called", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (name) => {
        expect(
          checkFileName({ ...newStoredCheck(name), createdAt: "2026-05-02T09:30:00Z" }),
        ).toMatch(/^stopfit-[\p{L}\p{N}\p{M}-]+-2026-05-02\.json$/u);
      }),
    );
  });
});
