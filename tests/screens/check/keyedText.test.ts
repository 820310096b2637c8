import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength, parseNumber } from "../../../src/records/entry/lengthEntry.ts";
import {
  eighths,
  type Key,
  type Keyed,
  pressed,
} from "../../../src/screens/check/keypad/keyedText.ts";

const keyOf = (name: string): Key => {
  if (/^\d$/.test(name)) return { does: "digit", digit: name };
  if (name === ".") return { does: "point" };
  if (name === "±") return { does: "sign" };
  if (name === "⌫") return { does: "erase" };
  if (name === "C") return { does: "clear" };
  if (name === "+16" || name === "+32")
    return { does: "step", denominator: name === "+16" ? 16 : 32 };
  return { does: "fraction", fraction: name };
};

function keyed(names: string, from = ""): string {
  const start: Keyed = { text: from, start: from.length, end: from.length };
  return names
    .split(" ")
    .filter(Boolean)
    .reduce((at, name) => pressed(at, keyOf(name)), start).text;
}

describe("keys", () => {
  it.each([
    ["5 8 . 7", "", "58.7"],
    [". 5", "", "0.5"],
    ["5 . 8 . 7", "", "5.87"],
    ["2 1/4 +16", "", "2 5/16"],
    ["2 1/4 +16 +32", "", "2 11/32"],
    ["1/4 +16 2", "", "2 5/16"],
    ["2 7/8 +16 +16", "", "3"],
    ["7/8 +16 +32 +32", "", "1"],
    ["2 1/4 1/2", "", "2 1/2"],
    ["1/2", "2.31", "2 1/2"],
    ["+32", "", "1/32"],
    ["+16", "2.5", "2.5"],
    ["8 ±", "", "-8"],
    ["± 8 ±", "", "8"],
    ["⌫", "2 5/16", "2"],
    ["⌫ ⌫", "2 5/16", ""],
    ["⌫", "58.7", "58."],
    ["C", "2 5/16", ""],
    ["0 1/4", "", "1/4"],
    ["1 2 3 4 5 6 7 8", "", "1234567"],
    ["6", "2 5/1", "2 5/16"],
  ])("%s after “%s” is “%s”", (names, from, text) => {
    expect(keyed(names, from)).toBe(text);
  });

  it("type where the caret stands, over what is marked", () => {
    expect(pressed({ text: "587", start: 2, end: 2 }, { does: "point" })).toEqual({
      text: "58.7",
      start: 3,
      end: 3,
    });
    expect(pressed({ text: "999", start: 0, end: 3 }, { does: "digit", digit: "4" }).text).toBe(
      "4",
    );
    expect(pressed({ text: "5.87", start: 1, end: 2 }, { does: "erase" })).toEqual({
      text: "587",
      start: 1,
      end: 1,
    });
  });

  it("reach every thirty-second of an inch in four presses at most", () => {
    for (let parts = 1; parts < 32; parts += 1) {
      const names: string[] = [];
      if (parts >= 4) names.push(eighths[Math.floor(parts / 4) - 1] ?? "");
      if (parts % 4 >= 2) names.push("+16");
      if (parts % 2 === 1) names.push("+32");
      const parsed = parseLength(keyed(`7 ${names.join(" ")}`), "in");
      expect(parsed.ok && parsed.value.mm).toBeCloseTo((7 + parts / 32) * 25.4, 9);
      expect(names.length).toBeLessThanOrEqual(3);
    }
  });

  const names = [..."0123456789", ".", "±", "⌫", "C", "+16", "+32", ...eighths];

  it("whichever are pressed, leave a number that can be read, or nothing yet", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...names), { maxLength: 20 }), (pressedNames) => {
        const text = keyed(pressedNames.join(" "));
        expect(text === "" || text === "-" || parseNumber(text).ok, `“${text}”`).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it("never break on a text that was typed otherwise", () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 12 }),
        fc.nat(12),
        fc.nat(12),
        fc.constantFrom(...names),
        (text, first, second, name) => {
          const [start = 0, end = 0] = [first, second]
            .map((at) => Math.min(at, text.length))
            .sort((a, b) => a - b);
          const next = pressed({ text, start, end }, keyOf(name));
          expect(next.end).toBeGreaterThanOrEqual(0);
          expect(next.end).toBeLessThanOrEqual(next.text.length);
          expect(next.text).not.toMatch(/NaN|undefined|Infinity/);
        },
      ),
    );
  });
});
