import { describe, expect, it } from "vitest";
import { openStored } from "../../../src/records/check/openStored.ts";

const at = "2026-05-02T10:00:00.000Z";
const epoch = "1970-01-01T00:00:00.000Z";
const given = { id: "a", name: "Tern", createdAt: at, updatedAt: at, record: {}, entries: {} };
const open = (change: object) => {
  const opened = openStored({ ...given, ...change });
  if (opened === null) throw new Error("it is no check");
  return opened;
};
const corner = { side: "left", gap: { values: [20], tol: 1 }, limits: [] };

describe("fields of a stored check", () => {
  it("that were not there get their beginning, and no others", () => {
    const opened = open({});
    expect(opened).toEqual({
      id: "a",
      name: "Tern",
      createdAt: at,
      updatedAt: at,
      record: opened.record,
      entries: {},
      choices: {},
      progress: { step: "", skipped: [], cautionsFor: null, stood: [], rightGeometry: null },
    });
    for (const name of ["deletedAt", "revision", "lastVerdict", "aside"]) {
      expect(name in opened, name).toBe(false);
    }
    const bare = openStored({ id: "a" });
    expect(bare).toMatchObject({ name: "", createdAt: epoch, updatedAt: epoch, entries: {} });
  });

  it("stay where they can be what they say, and go where they can't", () => {
    for (const lastVerdict of ["ok", "care", "no", "unsure"]) {
      expect(open({ lastVerdict }).lastVerdict).toBe(lastVerdict);
    }
    for (const none of ["", "fits", 5])
      expect("lastVerdict" in open({ lastVerdict: none })).toBe(false);
    expect(open({ deletedAt: at }).deletedAt).toBe(at);
    expect("deletedAt" in open({ deletedAt: 5 })).toBe(false);
    expect(open({ revision: 0 }).revision).toBe(0);
    expect(open({ revision: 7.9 }).revision).toBe(7);
    for (const none of [-1, "1", Number.NaN])
      expect("revision" in open({ revision: none })).toBe(false);
    expect(open({ name: 5 }).name).toBe("");
    expect(open({ createdAt: "x", updatedAt: at }).createdAt).toBe(at);
    expect(open({ createdAt: at, updatedAt: "x" }).updatedAt).toBe(at);
    expect(open({ createdAt: 5, updatedAt: null })).toMatchObject({
      createdAt: epoch,
      updatedAt: epoch,
    });
    expect(open({ own: [1] })).toMatchObject({ own: [1] });
  });

  it("of how far it is, each by itself", () => {
    for (const cautionsFor of ["level", "raised"]) {
      expect(open({ progress: { cautionsFor } }).progress.cautionsFor).toBe(cautionsFor);
    }
    for (const rightGeometry of ["same", "own"]) {
      expect(open({ progress: { rightGeometry } }).progress.rightGeometry).toBe(rightGeometry);
    }
    const whole = { step: "left.gap", skipped: ["a"], stood: ["level"], more: 1 };
    expect(open({ progress: whole }).progress).toMatchObject(whole);
    const odd = { step: 5, skipped: [1, "a"], stood: "level", cautionsFor: "", rightGeometry: "" };
    expect(open({ progress: odd }).progress).toEqual({
      step: "",
      skipped: ["a"],
      cautionsFor: null,
      stood: [],
      rightGeometry: null,
    });
  });

  it("of entries: texts, unit and ±, with tool, reach and who, where they are texts", () => {
    const entry = { texts: ["21"], unit: "in", tol: "1", tool: "t", reach: "clear", by: "Ada" };
    expect(open({ entries: { "left.gap": entry } }).entries["left.gap"]).toEqual(entry);
    const bare = open({ entries: { "left.gap": { tool: 1, reach: 1, by: 1 } } }).entries[
      "left.gap"
    ];
    expect(bare).toEqual({ texts: [], unit: "mm", tol: "" });
    expect(Object.keys(bare ?? {}).sort()).toEqual(["texts", "tol", "unit"]);
    expect(
      open({ entries: { "left.gap": { texts: ["a", 1] } } }).entries["left.gap"]?.texts,
    ).toEqual(["a"]);
    expect(open({ entries: { a: 5, b: null, c: [] } }).entries).toEqual({});
    const proto = JSON.parse('{"__proto__":{"texts":["x"]},"b":{"texts":["y"]}}');
    expect(Object.keys(open({ entries: proto }).entries)).toEqual(["b"]);
    expect(open({ entries: 5 }).entries).toEqual({});
  });

  it("of what waits aside, as it is stored now and as the text it was once", () => {
    const aside = open({ aside: { left: corner } }).aside;
    expect(aside).toEqual({ left: corner });
    expect(open({ aside: { right: corner } }).aside).toEqual({
      right: { ...corner, side: "right" },
    });
    const text = (value: unknown) => ({ texts: [JSON.stringify(value)], unit: "mm", tol: "" });
    const old = open({ entries: { "aside.left": text(corner), "left.gap": text(1) } });
    expect(old.aside).toEqual({ left: corner });
    expect(Object.keys(old.entries)).toEqual(["left.gap"]);
    const both = open({
      aside: { left: corner },
      entries: { "aside.left": text({ ...corner, gap: { values: [9], tol: 1 } }) },
    });
    expect(both.aside).toEqual({ left: corner });
    const right = open({ entries: { "aside.right": text(corner) } });
    expect(right.aside).toEqual({ right: { ...corner, side: "right" } });
    const hand = {
      name: "By hand",
      duty: "impact",
      curve: [
        [0, 0],
        [10, 100],
      ],
    };
    const found = open({ entries: { "aside.stop.hand": text(hand) } });
    expect(found.aside).toMatchObject({ handStop: { name: "By hand" } });
    expect(Object.keys(found.aside ?? {})).toEqual(["handStop"]);
    expect(open({ aside: { left: corner, right: corner, handStop: hand } }).aside).toMatchObject({
      left: corner,
      right: { side: "right" },
      handStop: { name: "By hand" },
    });
    for (const none of [{ texts: ["{"] }, { texts: [] }, { texts: "x" }, {}, 5]) {
      expect("aside" in open({ entries: { "aside.left": none } })).toBe(false);
    }
    for (const none of [5, null, [], {}, { left: 5 }])
      expect("aside" in open({ aside: none })).toBe(false);
  });
});
