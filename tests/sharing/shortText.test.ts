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
});
