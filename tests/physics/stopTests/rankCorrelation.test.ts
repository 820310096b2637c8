import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rankCorrelation } from "../../../src/physics/stopTests/rankCorrelation.ts";

const of = (first: readonly number[], second: readonly number[]) =>
  rankCorrelation(Float64Array.from(first), Float64Array.from(second));

describe("Spearman's rank correlation", () => {
  it("is 1 − 6Σd²/(n(n² − 1)) without ties", () => {
    // Ranks 1 … 5 against 2 1 4 3 5: Σd² = 4, so 1 − 24/120.
    expect(of([10, 20, 30, 40, 50], [7, 3, 90, 11, 1000])).toBeCloseTo(0.8, 12);
    // Against 5 1 2 3 4: Σd² = 16 + 1 + 1 + 1 + 1.
    expect(of([1, 2, 3, 4, 5], [9, 1, 2, 3, 4])).toBeCloseTo(0, 12);
  });

  it("gives tied values their mean rank", () => {
    // Ranks 1.5 1.5 3 against 1 2 3: deviations −½ −½ 1 and −1 0 1, so 1.5/√(1.5·2).
    expect(of([4, 4, 8], [1, 2, 3])).toBeCloseTo(1.5 / Math.sqrt(3), 12);
    // Ranks 1 3 3 3 5 against 1 … 5: 8/√(8·10).
    expect(of([0, 2, 2, 2, 9], [1, 2, 3, 4, 5])).toBeCloseTo(8 / Math.sqrt(80), 12);
  });

  it("is 0 where a column does not change, or there is none", () => {
    expect(of([5, 5, 5], [1, 2, 3])).toBe(0);
    expect(of([1, 2, 3], [5, 5, 5])).toBe(0);
    expect(of([], [])).toBe(0);
  });

  it("is 1 for whatever always rises, −1 for what always falls, the same either way about", () => {
    const columns = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), {
      minLength: 2,
      maxLength: 40,
    });
    fc.assert(
      fc.property(columns, (values) => {
        const cubes = values.map((value) => value ** 3 + value);
        expect(of(values, cubes)).toBeCloseTo(1, 12);
        const falling = cubes.map((value) => -value);
        expect(of(values, falling)).toBeCloseTo(-1, 12);
      }),
    );
  });

  it("takes an even sample of a long file", () => {
    // Every row alternates, and every second of 7999 is sampled: 0, 2, 4 … rise.
    const rows = Array.from({ length: 7999 }, (_, place) => place);
    const teeth = rows.map((place) => (place % 2 === 0 ? place : -place));
    expect(of(rows, teeth)).toBeCloseTo(1, 12);
    // One row fewer than twice as many and each would count: the teeth of 4000 rows all do.
    expect(of(rows.slice(0, 4000), teeth.slice(0, 4000))).toBeLessThan(0.5);
  });
});
