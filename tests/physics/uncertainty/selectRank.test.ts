import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";
import { selectRank } from "../../../src/physics/uncertainty/selectRank.ts";

const sorted = (values: Iterable<number>) => [...values].sort((a, b) => a - b);

/** The number of a rank stands in its place, the lesser before it and the greater behind it. */
function expectSelected(before: Float64Array, after: Float64Array, rank: number, found: number) {
  expect(found).toBe(sorted(before)[rank]);
  expect(after[rank]).toBe(found);
  expect(Math.max(...after.subarray(0, rank + 1))).toBe(found);
  expect(Math.min(...after.subarray(rank))).toBe(found);
  expect(sorted(after)).toEqual(sorted(before));
}

describe("the number of a rank", () => {
  it.each([
    [[7], 0, 7],
    [[2, 1], 0, 1],
    [[2, 1], 1, 2],
    [[1, 2], 0, 1],
    [[3, 3], 1, 3],
    [[5, 1, 4, 2, 3], 0, 1],
    [[5, 1, 4, 2, 3], 2, 3],
    [[5, 1, 4, 2, 3], 4, 5],
    [[1, 1, 0, 1, 1], 1, 1],
  ])("of %o, rank %d, is %d", (values, rank, found) => {
    const moved = Float64Array.from(values);
    expect(selectRank(moved, rank)).toBe(found);
    expectSelected(Float64Array.from(values), moved, rank, found);
  });

  it("is that of all numbers sorted, whatever they are, and parts them", () => {
    const value = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((number) => number + 0),
      fc.integer({ min: -3, max: 3 }).map((few) => few + 0),
    );
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 80 }), fc.nat(), (values, any) => {
        const rank = any % values.length;
        const moved = Float64Array.from(values);
        expectSelected(Float64Array.from(values), moved, rank, selectRank(moved, rank));
      }),
    );
  });

  it("is looked for between left and right alone; what lies beyond stays", () => {
    const moved = Float64Array.of(9, -9, 5, 3, 4, 1, 2, -8, 8);
    expect(selectRank(moved, 3, 2, 6)).toBe(2);
    expect([...moved.subarray(0, 2), ...moved.subarray(7)]).toEqual([9, -9, -8, 8]);
    expect(sorted(moved.subarray(2, 4))).toEqual([1, 2]);
    expect(sorted(moved.subarray(4, 7))).toEqual([3, 4, 5]);
  });
});

describe("the number of a rank among many", () => {
  const drawn = (seed: number, count = 10_000) => {
    const draws = new Float64Array(count);
    RandomSource.stream(seed, "draws").addNormal(draws, 3);
    return draws;
  };

  it.each([0, 1, 249, 2500, 4999, 5000, 9750, 9998, 9999])(
    "is that of all sorted: rank %d",
    (rank) => {
      const draws = drawn(1);
      const moved = Float64Array.from(draws);
      expectSelected(draws, moved, rank, selectRank(moved, rank));
    },
  );

  it.each([
    ["rising", (index: number) => index],
    ["falling", (index: number) => -index],
    ["all the same", () => 4],
    ["of three values", (index: number) => index % 3],
  ])("is that of all sorted where they are %s", (_, valueAt) => {
    const values = Float64Array.from({ length: 10_000 }, (_, index) => valueAt(index));
    for (const rank of [0, 250, 5000, 9999]) {
      const moved = Float64Array.from(values);
      expectSelected(values, moved, rank, selectRank(moved, rank));
    }
  });

  /** Comparisons over 100 000 numbers, the mean of three rows: a look that is not for moving a number. */
  const comparisonsFor = (rank: number) => {
    const seeds = [1, 2, 3];
    let comparisons = 0;
    for (const seed of seeds) {
      const watched = new Proxy(drawn(seed, 100_000), {
        get: (target, place) => {
          comparisons++;
          return Reflect.get(target, place, target);
        },
        set: (target, place, value) => {
          comparisons--;
          return Reflect.set(target, place, value, target);
        },
      });
      selectRank(watched, rank, 0, 99_999);
    }
    return comparisons / seeds.length;
  };

  // n + min(k, n − k) + O(n^⅔·(ln n)^⅓), Floyd & Rivest 1975, from memory; the factor of the last part
  // is ours. Without their sample a median takes 3.4 n and an end 2 n (Knuth, The Art of Computer
  // Programming, vol. 3, 5.2.2, from memory), which is more than these bounds.
  it.each([0, 2_500, 50_000, 97_500, 99_999])(
    "takes as few comparisons as published: rank %d",
    (rank) => {
      const part = 100_000 ** (2 / 3) * Math.log(100_000) ** (1 / 3);
      expect(comparisonsFor(rank)).toBeLessThan(
        100_000 + Math.min(rank, 100_000 - rank) + 6 * part,
      );
    },
  );
});
