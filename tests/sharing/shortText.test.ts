import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseAngle, parseLength, parseMass } from "../../src/records/entry/lengthEntry.ts";
import { fromShortText, toShortText } from "../../src/sharing/shortText.ts";
import { anyRecord } from "../records/arbitraries.ts";

describe("short text", () => {
  it("gives every record again, letter for letter", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        expect(fromShortText(toShortText(record))).toBe(JSON.stringify(record));
      }),
    );
  });

  it("gives any JSON again, also where it looks like short text already", () => {
    const tricky = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom("~", "~~", "~1|2", "~1|2 mm", "|", "~|", "~~1|2"),
      fc.record({
        values: fc.array(
          fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.string()),
        ),
        tol: fc.oneof(fc.integer(), fc.constant("1")),
        typed: fc.array(fc.constantFrom("1 mm", "1|2 mm", "-0 mm", "1e3 mm", "")),
      }),
    );
    fc.assert(
      fc.property(fc.array(tricky), (value) => {
        const plain = JSON.stringify(value);
        expect(fromShortText(toShortText(JSON.parse(plain)))).toBe(plain);
      }),
      { numRuns: 1000 },
    );
  });

  it("shortens a reading with what was typed", () => {
    const reading = { values: [58.7375, 58.7], tol: 1.5, typed: ["2 5/16 in", "58,7 mm"] };
    expect(toShortText({ reading })).toBe('{"reading":"~1.5|2 5/16 in|58,7 mm"}');
  });

  it("leaves a reading in full whose numbers are not what was typed", () => {
    const reading = { values: [58.8], tol: 1.5, typed: ["2 5/16 in"] };
    expect(toShortText({ reading })).toBe(JSON.stringify({ reading }));
  });

  it("shortens whatever the app itself writes for a typed entry", () => {
    const texts = fc.oneof(
      fc.integer({ min: 1, max: 9999 }).map((n) => `${n / 10}`),
      fc.integer({ min: 1, max: 9999 }).map((n) => `${n / 10}`.replace(".", ",")),
      fc
        .tuple(fc.nat(40), fc.integer({ min: 1, max: 15 }), fc.constantFrom(" ", "-"))
        .map(([whole, part, joint]) => `${whole}${joint}${part}/16`),
    );
    const entries = fc.tuple(texts, fc.constantFrom("mm", "in", "kg", "lb", "°"));
    fc.assert(
      fc.property(entries, ([text, unit]) => {
        const parsed =
          unit === "mm" || unit === "in"
            ? parseLength(text, unit)
            : unit === "°"
              ? parseAngle(text)
              : parseMass(text, unit === "kg" ? "kg" : "lb");
        fc.pre(parsed.ok);
        if (!parsed.ok) return;
        const value = "mm" in parsed.value ? parsed.value.mm : parsed.value.value;
        const reading = { values: [value], tol: 1, typed: [parsed.value.typed] };
        expect(toShortText(reading)).toBe(JSON.stringify(`~1|${parsed.value.typed}`));
      }),
    );
  });

  it("reads any text or throws nothing but a fault of JSON", () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        try {
          expect(typeof fromShortText(text)).toBe("string");
        } catch (error) {
          expect(error).toBeInstanceOf(SyntaxError);
        }
      }),
    );
  });

  const read = (text: string): unknown => JSON.parse(fromShortText(JSON.stringify(text)));

  it.each([
    ["58 mm", 58],
    ["5. mm", 5],
    ["58.7 mm", 58.7],
    ["1.23456 mm", 1.23456],
    [".25 in", 6.35],
    [",5 cm", 5],
    ["123456789.5 kg", 123_456_789.5],
    ["2 lb", 0.907_184_74],
    ["8,5 °", 8.5],
    ["-8.5 °", -8.5],
    ["1/2 in", 12.7],
    ["15/16 in", 23.8125],
    ["3/1000 in", 0.0762],
    ["2 5/16 in", 58.7375],
    ["12-1/2 in", 317.5],
    ["-2 1/2 in", -63.5],
    ["-0 mm", 0],
    ["-0/4 in", 0],
  ])("reads what was typed, %j, with the number it stands for", (typed, value) => {
    expect(read(`~1.5|${typed}`)).toEqual({ values: [value], tol: 1.5, typed: [typed] });
    expect(toShortText({ values: [value], tol: 1.5, typed: [typed] })).toBe(
      JSON.stringify(`~1.5|${typed}`),
    );
  });

  it("shortens a reading of which nothing was typed to its numbers", () => {
    expect(toShortText({ values: [2, -3.5], tol: 0.5 })).toBe('"~0.5|2|-3.5"');
    // Nothing of a field without a value is ever written: it is read as the one without that field.
    const without = { values: [2], tol: 1, typed: undefined };
    expect(fromShortText(toShortText(without))).toBe('{"values":[2],"tol":1}');
  });

  it("reads repeats, as numbers or as what was typed", () => {
    expect(read("~0|2|-3.5|1e+21")).toEqual({ values: [2, -3.5, 1e21], tol: 0 });
    expect(read("~1|2 mm|1 in")).toEqual({
      values: [2, 25.4],
      tol: 1,
      typed: ["2 mm", "1 in"],
    });
  });

  it.each([
    "~",
    "~1",
    "~|2",
    "~x|2",
    "~1|",
    "~1|x",
    "~1|2|x",
    "~1|2|3 mm",
    "~1|2 mm|x",
    "~01|2",
    "~1|2.0",
    "~1|1e3",
    "~1|Infinity",
    "~NaN|2",
    "~1|-0",
    "~1| 2",
    "~1|2 mm wide",
    "~1|2 mmm",
    "~1|2 m",
    "~1|2mm",
    "~1|x2 mm",
    "~1|x5 mm",
    "~1|.x mm",
    "~1|. mm",
    "~1|1234567890 mm",
    "~1|a 1/2 in",
    "~1|1/2 in wide",
    "~1|1/0 in",
    "~1|1  1/2 in",
    "~1|1/ in",
  ])("leaves %j as the text that it is", (text) => {
    expect(read(text)).toBe(text);
  });

  it("takes one mark from a text that begins with two, which a record's own text had", () => {
    expect(toShortText("~1|2")).toBe('"~~1|2"');
    expect(read("~~1|2")).toBe("~1|2");
    expect(read("~~")).toBe("~");
    expect(read("a~~1|2")).toBe("a~~1|2");
  });

  it.each([
    { values: [], tol: 1 },
    { values: "2", tol: 1 },
    { values: null, tol: 1 },
    { values: ["2"], tol: 1 },
    { values: [2, "2"], tol: 1 },
    { values: [2, null], tol: 1 },
    { values: [2, Number.NaN], tol: 1 },
    { values: [2], tol: "1" },
    { values: [2], tol: null },
    { values: [2], tol: Number.POSITIVE_INFINITY },
    { tol: 1, values: [2] },
    { values: [2] },
    { values: [2], tol: 1, more: 1 },
    { values: [2], tol: 1, typed: "2 mm" },
    { values: [2], tol: 1, typed: [] },
    { values: [2], tol: 1, typed: ["2 mm", "2 mm"] },
    { values: [2, 3], tol: 1, typed: ["2 mm"] },
    { values: [2, 3], tol: 1, typed: ["2 mm", "4 mm"] },
    { values: [2], tol: 1, typed: [2] },
    { values: [2], tol: 1, typed: [["2 mm"]] },
    { values: [2], tol: 1, typed: null },
    { values: [2], tol: 1, more: ["2 mm"] },
    [2, 1],
  ])("leaves %j in full, for it is no reading", (value) => {
    expect(toShortText({ value })).toBe(JSON.stringify({ value }));
    expect(fromShortText(toShortText({ value }))).toBe(JSON.stringify({ value }));
  });
});
