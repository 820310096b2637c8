import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type TapeClass, tapeLimit } from "../../../src/records/entry/toolTolerance.ts";

// The figures of OIML R 35-1 stand in tests/published/oimlR35.ts; here that they hold at every length.
const table: readonly { tapeClass: TapeClass; a: number; b: number; c: number }[] = [
  { tapeClass: "I", a: 0.1, b: 0.1, c: 0.1 },
  { tapeClass: "II", a: 0.3, b: 0.2, c: 0.2 },
  { tapeClass: "III", a: 0.6, b: 0.4, c: 0.3 },
];

function limit(tapeClass: TapeClass, lengthMm: number, fromItsEnd = false): number {
  const outcome = tapeLimit(tapeClass, lengthMm, { fromItsEnd });
  if (!outcome.ok) throw new Error("no limit");
  return outcome.value;
}

describe("the maximum permissible error of a tape", () => {
  it.each(table)("of class $tapeClass steps at each whole metre begun", ({ tapeClass, a, b }) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (lengthMm) => {
        expect(limit(tapeClass, lengthMm)).toBeCloseTo(a + b * Math.ceil(lengthMm / 1000), 12);
      }),
    );
  });

  it.each(table)("of class $tapeClass is larger by c from its hook", ({ tapeClass, c }) => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100_000, noNaN: true }), (lengthMm) => {
        expect(limit(tapeClass, lengthMm, true) - limit(tapeClass, lengthMm)).toBeCloseTo(c, 12);
      }),
    );
  });

  it("is none where there is no length", () => {
    for (const length of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, 100_001]) {
      expect(tapeLimit("II", length).ok).toBe(false);
    }
  });
});
