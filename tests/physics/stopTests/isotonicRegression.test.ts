import fc from "fast-check";
import { expect, test } from "vitest";
import { isotonicRegression } from "../../../src/physics/stopTests/isotonicRegression.ts";

// The min-max formula and a worked case stand in tests/published/barlow1972.ts.

const pairs = fc.array(
  fc.tuple(
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.double({ min: 0.1, max: 10, noNaN: true }),
  ),
  { maxLength: 30 },
);

test("blocks lie end to end, rise, and keep the weighted sum", () => {
  fc.assert(
    fc.property(pairs, (data) => {
      const values = data.map(([value]) => value);
      const weights = data.map(([, weight]) => weight);
      const blocks = isotonicRegression(values, weights);
      let next = 0;
      let last = Number.NEGATIVE_INFINITY;
      for (const { from, to, value } of blocks) {
        expect(from).toBe(next);
        expect(to).toBeGreaterThanOrEqual(from);
        expect(value).toBeGreaterThan(last);
        const slice = data.slice(from, to + 1);
        const weight = slice.reduce((sum, [, w]) => sum + w, 0);
        const mean = slice.reduce((sum, [v, w]) => sum + v * w, 0) / weight;
        expect(value).toBeCloseTo(mean, 9);
        next = to + 1;
        last = value;
      }
      expect(next).toBe(data.length);
    }),
  );
});

test("values that rise already stay as they are", () => {
  expect(isotonicRegression([1, 2, 4, 8], [1, 1, 1, 1]).map(({ value }) => value)).toEqual([
    1, 2, 4, 8,
  ]);
});

test("neighbours of the same value are one block", () => {
  expect(isotonicRegression([1, 1, 3, 3, 3, 5], [1, 2, 1, 1, 1, 1])).toEqual([
    { from: 0, to: 1, value: 1, weight: 3 },
    { from: 2, to: 4, value: 3, weight: 3 },
    { from: 5, to: 5, value: 5, weight: 1 },
  ]);
});
