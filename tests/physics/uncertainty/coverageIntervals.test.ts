import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CoverageIntervals } from "../../../src/physics/uncertainty/coverageIntervals.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

/** By its definition: all values sorted, the place between two ranks in proportion. */
function bySorting(values: readonly number[], probability: number): readonly [number, number] {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (place: number) => {
    const rank = Math.floor(place);
    const low = sorted[rank] as number;
    return low + (place - rank) * ((sorted[rank + 1] ?? low) - low);
  };
  const tail = ((1 - probability) / 2) * (values.length - 1);
  return [at(tail), at(values.length - 1 - tail)];
}

function byDraws(values: readonly number[], probability: number) {
  const covered = new CoverageIntervals(1, values.length);
  for (const value of values) covered.add(Float64Array.of(value));
  return covered.intervals(probability)[0];
}

describe("coverage intervals", () => {
  it("are those of all values sorted, however the values lie", () => {
    const value = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: -3, max: 3 }).map((few) => few + 0),
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 700 }),
        fc.constantFrom(0.5, 0.9, 0.95, 1),
        (values, probability) => {
          const [low, high] = bySorting(values, probability);
          const [ourLow = Number.NaN, ourHigh = Number.NaN] = byDraws(values, probability) ?? [];
          const near = 1e-12 * Math.max(1, Math.abs(low), Math.abs(high));
          expect(Math.abs(ourLow - low)).toBeLessThanOrEqual(near);
          expect(Math.abs(ourHigh - high)).toBeLessThanOrEqual(near);
        },
      ),
      { numRuns: 600 },
    );
  });

  it("are those of all values sorted at many draws, also where every sixteenth is far off the others", () => {
    const draws = new Float64Array(20_000);
    RandomSource.stream(7, "draws").addNormal(draws, 3);
    const plain = [...draws];
    const misleading = plain.map((value, index) => (index % 16 === 0 ? value - 1000 : value));
    for (const values of [plain, misleading, misleading.map((value) => -value)]) {
      const [low, high] = bySorting(values, 0.95);
      const [ourLow, ourHigh] = byDraws(values, 0.95) ?? [];
      expect(ourLow).toBeCloseTo(low, 10);
      expect(ourHigh).toBeCloseTo(high, 10);
    }
  });

  it("hold each figure's own, and none where no draw came", () => {
    const covered = new CoverageIntervals(2, 3);
    for (const row of [
      [1, 30],
      [3, 10],
      [2, 20],
    ]) {
      covered.add(Float64Array.from(row));
    }
    expect(covered.intervals(1)).toEqual([
      [1, 3],
      [10, 30],
    ]);
    expect(new CoverageIntervals(2, 9).intervals()).toEqual([null, null]);
  });
});
