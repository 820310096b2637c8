import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type TapeClass, tapeLimit } from "../../src/records/toolTolerance.ts";

// OIML R 35-1:2007 (E), Material measures of length for general use, clause 4: maximum permissible
// error ±(a + b·L) mm, L in metres rounded up to the next whole metre; c more where an end of the
// length is a surface. a, b, c read in a secondary source that gives the table of the directive on
// measuring instruments (the same as R 35-1's); the clause in the contents of R 35-1.
const table: readonly {
  tapeClass: TapeClass;
  a: number;
  b: number;
  c: number;
}[] = [
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
  // Worked out by hand from the table: ± mm at 0.5, 1, 1.2, 2, 5 and 10 m.
  it.each([
    ["I", [0.2, 0.2, 0.3, 0.3, 0.6, 1.1]],
    ["II", [0.5, 0.5, 0.7, 0.7, 1.3, 2.3]],
    ["III", [1.0, 1.0, 1.4, 1.4, 2.6, 4.6]],
  ] as const)("of class %s at six lengths", (tapeClass, expected) => {
    const lengths = [500, 1000, 1200, 2000, 5000, 10_000];
    lengths.forEach((length, index) => {
      expect(limit(tapeClass, length)).toBeCloseTo(expected[index] ?? Number.NaN, 12);
    });
  });

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
