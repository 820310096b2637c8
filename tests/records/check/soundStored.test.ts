import { describe, expect, it } from "vitest";
import { isSoundId, soundStored } from "../../../src/records/check/soundStored.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const now = new Date("2026-05-02T12:00:00.000Z");
const at = "2026-05-01T10:00:00.000Z";
const entry = { texts: ["21"], unit: "mm", tol: "1" } as const;
const stored: StoredCheck = {
  ...setEntry(newStoredCheck("Tern"), "left.gap", entry),
  createdAt: at,
  updatedAt: at,
};

/** What becomes of the check with something else in it. */
function sound(change: object): StoredCheck {
  const found = soundStored(structuredClone({ ...stored, ...change }), now);
  if (found === null) throw new Error("it is no check");
  return found;
}

describe("an id", () => {
  it("is plain letters, up to two hundred, without a space before them", () => {
    for (const id of ["a", "!", "~", "6f6c1c9e-0000", "a b", "a".repeat(200)]) {
      expect([id, isSoundId(id)]).toEqual([id, true]);
    }
    const none = [
      "",
      " a",
      "a".repeat(201),
      "\ud83d",
      "é",
      "a\n",
      "\u007f",
      "a\u007f",
      5,
      null,
      ["a"],
    ];
    for (const id of none) expect([id, isSoundId(id)]).toEqual([id, false]);
  });
});

describe("a check that is stored", () => {
  it("stays what it is where nothing is wrong with it", () => {
    const whole = { ...storedFromRecord(demoRecord("arm-fits")), createdAt: at, updatedAt: at };
    expect(soundStored(structuredClone(whole), now)).toEqual(whole);
    expect(sound({})).toEqual(stored);
    expect("deletedAt" in sound({})).toBe(false);
    expect("earlier" in sound({})).toBe(false);
    expect("again" in sound({})).toBe(false);
  });

  it("is none without an id", () => {
    for (const none of [null, 5, "a", [], {}, { id: "" }, { id: 5 }]) {
      expect(soundStored(none, now)).toBeNull();
    }
  });

  it("has clean texts, and dates that no clock gives are of today", () => {
    expect(sound({ name: "Tern\u202e \ud83d" }).name).toBe("Tern \ufffd");
    const far = "9999-01-01T00:00:00.000Z";
    const late = sound({ createdAt: far, updatedAt: far, deletedAt: far });
    expect(late).toMatchObject({
      createdAt: now.toISOString(),
      updatedAt: now.toISOString(),
      deletedAt: now.toISOString(),
    });
    expect(sound({ deletedAt: at }).deletedAt).toBe(at);
    const record = { ...stored.record, createdAt: far };
    expect(sound({ record }).record.createdAt).toBe(now.toISOString());
    expect(sound({ record: { ...record, createdAt: at } }).record.createdAt).toBe(at);
  });

  it("goes by its own id where its record has none that an address can hold", () => {
    expect(sound({ record: { ...stored.record, id: "other" } }).record.id).toBe("other");
    expect(sound({ record: { ...stored.record, id: " x" } }).record.id).toBe(stored.id);
  });
});

describe("values from before", () => {
  const one = { reading: "left.gap", until: at, entry };
  it("stay, those of them that can be shown", () => {
    expect(sound({ earlier: { a: one } }).earlier).toEqual({ a: one });
    const { tool: _, ...without } = { ...entry, tool: 5 };
    for (const bad of [
      5,
      null,
      { ...one, reading: 5 },
      { ...one, until: undefined },
      { ...one, entry: null },
      { ...one, entry: { ...without, texts: "21" } },
      { ...one, entry: { ...without, texts: [21] } },
      { ...one, entry: { ...without, texts: ["21", 21] } },
      { ...one, entry: { ...without, unit: null } },
      { ...one, entry: { ...without, tol: 1 } },
      { ...one, entry: { ...without, tool: 5 } },
      { ...one, entry: { ...without, reach: 5 } },
    ]) {
      expect(sound({ earlier: { a: one, b: bad } }).earlier).toEqual({ a: one });
    }
    const tooled = { ...one, entry: { ...entry, tool: "tapeII", reach: "clear" } };
    expect(sound({ earlier: { a: tooled } }).earlier).toEqual({ a: tooled });
    for (const none of [5, null, [one], "a"])
      expect("earlier" in sound({ earlier: none })).toBe(false);
  });
});

describe("a walk through readings to take again", () => {
  const now_ = {
    reading: "left.gap",
    before: null,
    tool: null,
    removes: 0.5,
    sentence: ["Off by ", { kind: "length", value: 2 }],
    doubt: null,
  };
  const walk = {
    level: "unsure",
    done: [{ reading: "left.gap", how: "taken" }],
    now: now_,
    left: 2,
    just: null,
  };

  it("stays whole, under way or through", () => {
    const doubt = { side: "left", halfWidthMm: 3 };
    for (const again of [
      walk,
      { ...walk, now: null },
      { ...walk, done: [] },
      { ...walk, just: doubt },
      {
        ...walk,
        now: { ...now_, before: entry, tool: { id: "t", name: "Tape" }, removes: null, doubt },
      },
    ]) {
      expect(sound({ again }).again).toEqual(again);
    }
    for (const kind of [
      "length",
      "angle",
      "rate",
      "damping",
      "roadSpeed",
      "contactRate",
      "stiffnessClass",
      "force",
      "mass",
      "energy",
      "speed",
      "acceleration",
      "share",
      "ratio",
      "count",
    ]) {
      const again = { ...walk, now: { ...now_, sentence: [{ kind, value: 1 }] } };
      expect(sound({ again }).again).toEqual(again);
    }
  });

  it.each([
    [5],
    [null],
    [{ ...walk, done: undefined }],
    [{ ...walk, done: {} }],
    [{ ...walk, done: [5] }],
    [{ ...walk, done: [{ reading: 5 }] }],
    [{ ...walk, left: "2" }],
    [{ ...walk, just: undefined }],
    [{ ...walk, just: 5 }],
    [{ ...walk, just: { side: 5, halfWidthMm: 3 } }],
    [{ ...walk, just: { side: "left" } }],
    [{ ...walk, now: undefined }],
    [{ ...walk, now: 5 }],
    [{ ...walk, now: { ...now_, reading: 5 } }],
    [{ ...walk, now: { ...now_, before: 5 } }],
    [{ ...walk, now: { ...now_, tool: 5 } }],
    [{ ...walk, now: { ...now_, tool: { id: 5, name: "Tape" } } }],
    [{ ...walk, now: { ...now_, tool: { id: "t" } } }],
    [{ ...walk, now: { ...now_, removes: "0.5" } }],
    [{ ...walk, now: { ...now_, sentence: "Off" } }],
    [{ ...walk, now: { ...now_, sentence: [5] } }],
    [{ ...walk, now: { ...now_, sentence: ["Off by ", 5] } }],
    [{ ...walk, now: { ...now_, sentence: [null] } }],
    [{ ...walk, now: { ...now_, sentence: [{ kind: "colour", value: 2 }] } }],
    [{ ...walk, now: { ...now_, sentence: [{ kind: "toString", value: 2 }] } }],
    [{ ...walk, now: { ...now_, sentence: [{ kind: 5, value: 2 }] } }],
    [{ ...walk, now: { ...now_, sentence: [{ kind: "length", value: "2" }] } }],
    [{ ...walk, now: { ...now_, doubt: 5 } }],
    [{ ...walk, now: { ...now_, doubt: { side: "left", halfWidthMm: null } } }],
  ])("is left out where it can't be shown: %o", (again) => {
    expect("again" in sound({ again })).toBe(false);
  });
});
