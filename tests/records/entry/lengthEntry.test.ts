import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { entryText, parseText } from "../../../src/records/entry/entry.ts";
import {
  parseAngle,
  parseContactRate,
  parseDamping,
  parseForce,
  parseLength,
  parseMass,
  parseNumber,
  parseRate,
  parseRoadSpeed,
} from "../../../src/records/entry/lengthEntry.ts";
import { fromModel, plainDecimal, toModel } from "../../../src/records/entry/units.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { sixteenths } from "../../../src/saying/quantityText.ts";

// Generated cases by the hundred take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

function value<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}

function sentence(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error(`read as ${JSON.stringify(outcome.value)}`);
  return inModelUnits(outcome.fault.sentence);
}

describe("lengths as people type them", () => {
  // The forms of the way through "new check", and those a tape and a keyboard add to them.
  const inches: readonly (readonly [string, number, string])[] = [
    ["2 5/16", 58.7375, "2 5/16 in"],
    ["2-5/16", 58.7375, "2-5/16 in"],
    ["2 - 5/16", 58.7375, "2 - 5/16 in"],
    ["5/16", 7.9375, "5/16 in"],
    ["9/8", 28.575, "9/8 in"],
    ["2.3125", 58.7375, "2.3125 in"],
    ["2½", 63.5, "2 1/2 in"],
    ["¼", 6.35, "1/4 in"],
    ["2 ⅜", 60.325, "2 3/8 in"],
    ["5⁄16", 7.9375, "5/16 in"],
    ['2 5/16"', 58.7375, "2 5/16 in"],
    ["2 5/16″", 58.7375, "2 5/16 in"],
    ["2 5/16 in", 58.7375, "2 5/16 in"],
    ["2 5/16IN.", 58.7375, "2 5/16 in"],
    ["  3 inches ", 76.2, "3 in"],
    [".5", 12.7, ".5 in"],
    ["58.7mm", 58.7, "58.7 mm"],
    ["5.87 cm", 58.7, "5.87 cm"],
  ];
  it.each(inches)("%s, typed in inches, is %f mm", (text, mm, typed) => {
    const parsed = value(parseLength(text, "in"));
    expect(parsed.mm).toBeCloseTo(mm, 12);
    expect(parsed.typed).toBe(typed);
  });

  it("2.31 in is 58.674 mm", () => {
    expect(value(parseLength("2.31", "in")).mm).toBeCloseTo(58.674, 12);
  });

  const millimetres: readonly (readonly [string, number])[] = [
    ["58,7", 58.7],
    ["58.7", 58.7],
    ["58", 58],
    ["58.", 58],
    ["0,5", 0.5],
    [",5", 0.5],
    ["0,125", 0.125],
    ["58 1/2", 58.5],
    ["1730", 1730],
    ["1.730", 1.73],
    ['2 5/16"', 58.7375],
  ];
  it.each(millimetres)("%s, typed in mm, is %f mm", (text, mm) => {
    expect(value(parseLength(text, "mm")).mm).toBeCloseTo(mm, 12);
  });

  it("a unit that is typed wins over the one that is set, and is reported", () => {
    expect(value(parseLength("2 in", "mm")).unit).toBe("in");
    expect(value(parseLength("50 mm", "in")).unit).toBe("mm");
    expect(value(parseLength("5 cm", "in")).unit).toBe("mm");
  });

  it("what was typed reads back as the same length whatever unit is set by then", () => {
    const text = fc.oneof(
      fc.constantFrom("2 5/16", "2-5/16", "5/16", "2½", "58,7", "2.31", "7 cm", '3 1/4"', "12 mm"),
      fc.integer({ min: 1, max: 99999 }).map((n) => `${n / 10}`),
    );
    const unit = fc.constantFrom("mm" as const, "in" as const);
    fc.assert(
      fc.property(text, unit, unit, (given, first, later) => {
        const parsed = value(parseLength(given, first));
        expect(value(parseLength(parsed.typed, later))).toEqual(parsed);
      }),
    );
  });
});

describe("entries that are refused, each in a sentence", () => {
  const refused: readonly (readonly [string, RegExp])[] = [
    ["", /Nothing is entered/],
    ["1,234.5", /more than one point or comma/],
    ["1.234,5", /more than one point or comma/],
    ["1,234", /two ways: type 1234 or 1\.234/],
    ["2 5/0", /divides by 0/],
    ["5/0", /divides by 0/],
    ["--3", /not a number that can be read/],
    ["1e999", /./],
    ["1e3", /./],
    ["5/16/2", /not a number that can be read/],
    ["2 9/8", /not less than 1/],
    ["2.5 5/16", /not a number that can be read/],
    ["2 5", /not a number that can be read/],
    ["-3", /below 0/],
    ["0", /more than 0/],
    ["0/16", /more than 0/],
    ["NaN", /./],
    ["Infinity", /./],
    ["0x10", /./],
    ["١٢", /./],
    ["12345678901234567890", /far too large/],
    ["12 ft", /Use mm, cm or inches/],
    ["1' 3\"", /not a number that can be read/],
    ["58 m", /Use mm, cm or inches/],
    ["mm", /./],
    ["9".repeat(500), /too long/],
    ["<script>", /./],
    ["5 kg", /Use mm, cm or inches/],
  ];
  it.each(refused)("%s", (text, words) => {
    const said = sentence(parseLength(text, "mm"));
    expect(said).toMatch(words);
    expect(said).toMatch(/\.$/);
  });

  it("any text at all is either a finite length above 0 or a sentence", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const outcome = parseLength(text, "in");
        if (outcome.ok) {
          expect(Number.isFinite(outcome.value.mm)).toBe(true);
          expect(outcome.value.mm).toBeGreaterThan(0);
        } else {
          expect(inModelUnits(outcome.fault.sentence).length).toBeGreaterThan(5);
        }
      }),
      { numRuns: 2000 },
    );
    const pieces = fc.constantFrom(..."0123456789/.,- ½\"'incmk");
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 10 }), (parts) => {
        const outcome = parseLength(parts.join(""), "mm");
        if (outcome.ok) expect(outcome.value.mm).toBeGreaterThan(0);
      }),
      { numRuns: 5000 },
    );
  });
});

describe("angles, masses, rates, damping, forces and plain numbers", () => {
  it("reads angles of either sign, with a comma and with °", () => {
    expect(value(parseAngle("8")).value).toBe(8);
    expect(value(parseAngle("8,5°")).value).toBe(8.5);
    expect(value(parseAngle("−3 deg")).value).toBe(-3);
    expect(value(parseAngle("- 3")).value).toBe(-3);
    expect(value(parseAngle("0")).value).toBe(0);
    expect(Object.is(value(parseAngle("-0")).value, 0)).toBe(true);
    expect(value(parseAngle("8,5°")).typed).toBe("8,5 °");
    expect(value(parseAngle("8,5 °")).value).toBe(8.5);
    expect(sentence(parseAngle("90"))).toMatch(/less than 90°/);
    expect(sentence(parseAngle("8 mm"))).toMatch(/Use degrees/);
  });

  it("reads masses in kg and lb", () => {
    expect(value(parseMass("560", "kg")).value).toBe(560);
    expect(value(parseMass("1234", "lb")).value).toBeCloseTo(559.73298458, 8);
    expect(value(parseMass("1234 lbs", "kg")).value).toBeCloseTo(559.73298458, 8);
    expect(sentence(parseMass("560 N", "kg"))).toMatch(/Use kg or lb/);
    expect(sentence(parseMass("0", "kg"))).toMatch(/more than 0/);
    expect(value(parseMass("0", "kg", "zeroOrMore")).value).toBe(0);
  });

  it("reads rates, damping and forces in both units", () => {
    expect(value(parseRate("28 N/mm", "lbf/in")).value).toBe(28);
    // As a screen shows it, and a copy from there has it.
    expect(value(parseRate("28\u00a0N/\u2060mm", "lbf/in")).value).toBe(28);
    expect(value(parseRate("160", "lbf/in")).value).toBeCloseTo(28.02029363943616, 10);
    expect(value(parseRate("160 lb/in", "N/mm")).value).toBeCloseTo(28.02029363943616, 10);
    expect(value(parseDamping("1.8 N·s/mm", "lbf·s/in")).value).toBe(1.8);
    expect(value(parseDamping("10 lbf*s/in", "N·s/mm")).value).toBeCloseTo(1.75126835246476, 12);
    expect(value(parseForce("100 lbf", "N")).value).toBeCloseTo(444.82216152605, 10);
    // A mile is 1.609344 km (NIST SP 811, Appendix B.8).
    expect(value(parseRoadSpeed("25", "mph")).value).toBeCloseTo(40.2336, 12);
    expect(value(parseRoadSpeed("40 km/h", "mph"))).toMatchObject({ value: 40, unit: "km/h" });
    expect(value(parseContactRate("3.2 per mile", "per km")).value).toBeCloseTo(1.98838781516, 10);
    expect(value(parseContactRate("2 per km", "per mile")).value).toBe(2);
    expect(sentence(parseRoadSpeed("40 knots", "mph"))).toMatch(/Use km\/h or mph/);
    expect(sentence(parseRate("28 N", "N/mm"))).toMatch(/Use N\/mm or lb\/in/);
  });

  it("reads a plain number with its sign as allowed", () => {
    expect(value(parseNumber("0,62", "aboveZero"))).toBe(0.62);
    expect(value(parseNumber("-1 1/2"))).toBe(-1.5);
    expect(sentence(parseNumber("-1", "zeroOrMore"))).toMatch(/below 0/);
  });
});

describe("format and parse", () => {
  const kinds = fc.constantFrom(
    ["length", "mm"] as const,
    ["length", "in"] as const,
    ["mass", "kg"] as const,
    ["mass", "lb"] as const,
    ["rate", "lbf/in"] as const,
    ["damping", "lbf·s/in"] as const,
    ["force", "lbf"] as const,
    ["roadSpeed", "mph"] as const,
    ["contactRate", "per mile"] as const,
    ["number", ""] as const,
  );

  it("a value written for editing reads back as exactly that value, in every unit", () => {
    const amount = fc.oneof(
      fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
      fc.integer({ min: 1, max: 100_000 }).map((n) => n / 10),
    );
    fc.assert(
      fc.property(kinds, amount, ([kind, unit], model) => {
        const text = entryText(model, kind, unit);
        expect(value(parseText(text, kind, unit, "any")).value).toBe(model);
      }),
      { numRuns: 2000 },
    );
  });

  it("a plain decimal has no exponent and reads back as exactly the same number", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        const text = plainDecimal(number);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(text)).toBe(number + 0);
      }),
      { numRuns: 2000 },
    );
  });

  it("inches as a tape shows them read back to within half a sixteenth", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.04, max: 90, noNaN: true }), (inches) => {
        const parsed = value(parseLength(sixteenths(inches), "in"));
        expect(Math.abs(parsed.mm / 25.4 - inches)).toBeLessThanOrEqual(1 / 32 + 1e-9);
      }),
    );
    expect(sixteenths(2.3125)).toBe("2 5/16");
    expect(sixteenths(2.5)).toBe("2 1/2");
    expect(sixteenths(0.99)).toBe("1");
    expect(sixteenths(-0.75)).toBe("-3/4");
    expect(sixteenths(-0.01)).toBe("0");
  });

  it("units round-trip to the last bit but one", () => {
    const unit = fc.constantFrom(
      "cm" as const,
      "in" as const,
      "lb" as const,
      "lbf" as const,
      "lbf/in" as const,
      "lbf·s/in" as const,
      "mph" as const,
      "per mile" as const,
    );
    fc.assert(
      fc.property(unit, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (each, number) => {
        const back = fromModel(toModel(number, each), each);
        expect(Math.abs(back - number)).toBeLessThanOrEqual(2.3e-16 * number);
      }),
    );
  });
});
