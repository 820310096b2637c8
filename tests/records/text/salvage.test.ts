import { describe, expect, it } from "vitest";
import { canonicalText, textDigest } from "../../../src/records/text/canonicalText.ts";
import { farAhead, instantOfDay, isFarAhead } from "../../../src/records/text/moment.ts";
import { eachOf, isPlainObject } from "../../../src/records/text/plainObject.ts";
import {
  flag,
  group,
  listOf,
  nullOr,
  number,
  oneOf,
  text,
  whole,
  wholeList,
} from "../../../src/records/text/salvage.ts";

describe("what can be kept of a stored value", () => {
  it("is a text, a number or a yes where it is one", () => {
    const values = ["a", "", 0, 5, Number.NaN, Number.POSITIVE_INFINITY, true, false, null, [], {}];
    const kept = (keep: (value: unknown) => unknown) =>
      values.filter((value) => keep(value) !== undefined);
    expect(kept(text)).toEqual(["a", ""]);
    expect(kept(number)).toEqual([0, 5]);
    expect(kept(flag)).toEqual([true, false]);
    expect(kept(oneOf<string | number>("a", 5))).toEqual(["a", 5]);
    expect(kept(nullOr(number))).toEqual([0, 5, null]);
  });

  it("is a list without its other items, or the whole of it", () => {
    expect(listOf(number)([1, "a", 2])).toEqual([1, 2]);
    expect(listOf(number)("ab")).toBeUndefined();
    expect(wholeList(number)([1, 2])).toEqual([1, 2]);
    expect(wholeList(number)([])).toEqual([]);
    expect(wholeList(number)([1, "a"])).toBeUndefined();
    expect(wholeList(number)({ length: 0 })).toBeUndefined();
  });

  it("is a group without what can't be, with what is not known of it", () => {
    const fields = { a: number, b: text };
    expect(group(fields)({ a: 1, b: 2, c: [3] })).toEqual({ a: 1, c: [3] });
    expect(group(fields)({ toString: 5 })).toEqual({ toString: 5 });
    for (const none of [null, [], "a", 1]) expect(group(fields)(none)).toBeUndefined();
    expect(whole(fields, ["a"])({ a: 1 })).toEqual({ a: 1 });
    expect(whole(fields, ["a", "b"])({ a: 1 })).toBeUndefined();
    expect(whole(fields, ["a"])({ b: "x" })).toBeUndefined();
    expect(whole(fields, ["a"])(null)).toBeUndefined();
  });

  it("is a group of named fields: no list, no null, no text", () => {
    expect([{}, { a: 1 }].map(isPlainObject)).toEqual([true, true]);
    expect([null, [], "a", 1, undefined].map(isPlainObject)).toEqual(Array(5).fill(false));
    expect(eachOf(["a", "b"], 1)).toEqual({ a: 1, b: 1 });
  });
});

describe("a canonical text", () => {
  it("is one for the same content, whatever the order of its fields, and another for other content", () => {
    const one = { b: [2, { d: 4, c: 3 }], a: null };
    expect(canonicalText(one)).toBe('{"a":null,"b":[2,{"c":3,"d":4}]}');
    expect(canonicalText({ a: null, b: [2, { c: 3, d: 4 }] })).toBe(canonicalText(one));
    expect(canonicalText([2, 1])).toBe("[2,1]");
    expect(canonicalText({ c: 1, a: 2, b: 3 })).toBe('{"a":2,"b":3,"c":1}');
  });

  it("has a digest of its own (cyrb53 of the same texts, by its author's script)", () => {
    // Figures of the published function with seed 0: "a" 7929297801672961, "b" 8684336938537663, "revenge" 4051478007546757.
    const published = { a: 7929297801672961, b: 8684336938537663, revenge: 4051478007546757 };
    for (const [given, digest] of Object.entries(published)) {
      expect(Number.parseInt(textDigest(given), 36), given).toBe(digest);
    }
  });
});

describe("a day", () => {
  const now = new Date("2026-05-02T15:00:00Z");
  it("stands for its noon, and is now where it is empty", () => {
    expect(instantOfDay("2026-05-01", now)).toBe("2026-05-01T12:00:00.000Z");
    expect(instantOfDay(" 2026-05-01 ", now)).toBe("2026-05-01T12:00:00.000Z");
    expect(instantOfDay("", now)).toBe(now.toISOString());
    expect(instantOfDay("  ", now)).toBe(now.toISOString());
  });

  it("that is none, or lies more than a day ahead, is none", () => {
    for (const none of [
      "2026-02-30",
      "2026-13-01",
      "May 1",
      "2026-5-1",
      "x2026-05-01",
      "2026-05-01x",
    ]) {
      expect(instantOfDay(none, now), none).toBeNull();
    }
    expect(instantOfDay("2026-05-03", now)).toBe("2026-05-03T12:00:00.000Z");
    expect(instantOfDay("2026-05-04", now)).toBeNull();
  });

  it("is far ahead more than a leap year from now, to the millisecond", () => {
    expect(farAhead(now)).toBe("2027-05-03T15:00:00.000Z");
    expect(isFarAhead("2027-05-03T15:00:00.000Z", now)).toBe(false);
    expect(isFarAhead("2027-05-03T15:00:00.001Z", now)).toBe(true);
  });
});
