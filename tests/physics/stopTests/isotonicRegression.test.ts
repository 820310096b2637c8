import fc from "fast-check";
import { expect, test } from "vitest";
import { isotonicRegression } from "../../../src/physics/stopTests/isotonicRegression.ts";

function fitted(values: readonly number[], weights: readonly number[]): number[] {
  return isotonicRegression(values, weights).flatMap(({ from, to, value }) =>
    Array.from({ length: to - from + 1 }, () => value),
  );
}

/** The min-max formula of the isotonic regression: Barlow et al. (1972), theorem 1.4; from memory. */
function minMax(values: readonly number[], weights: readonly number[]): number[] {
  const mean = (from: number, to: number) => {
    let sum = 0;
    let weight = 0;
    for (let place = from; place <= to; place++) {
      sum += (weights[place] as number) * (values[place] as number);
      weight += weights[place] as number;
    }
    return sum / weight;
  };
  return values.map((_, place) => {
    let most = Number.NEGATIVE_INFINITY;
    for (let from = 0; from <= place; from++) {
      let least = Number.POSITIVE_INFINITY;
      for (let to = place; to < values.length; to++) least = Math.min(least, mean(from, to));
      most = Math.max(most, least);
    }
    return most;
  });
}

const pairs = fc.array(
  fc.tuple(
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.double({ min: 0.1, max: 10, noNaN: true }),
  ),
  { maxLength: 30 },
);

test("agrees with the min-max formula", () => {
  fc.assert(
    fc.property(pairs, (data) => {
      const values = data.map(([value]) => value);
      const weights = data.map(([, weight]) => weight);
      const other = minMax(values, weights);
      for (const [place, value] of fitted(values, weights).entries()) {
        expect(value).toBeCloseTo(other[place] as number, 9);
      }
    }),
  );
});

test("values that rise already stay as they are", () => {
  expect(fitted([1, 2, 4, 8], [1, 1, 1, 1])).toEqual([1, 2, 4, 8]);
});

test("a worked case: 1, 3, 2, 4, 3, 5 with equal weights", () => {
  expect(fitted([1, 3, 2, 4, 3, 5], [1, 1, 1, 1, 1, 1])).toEqual([1, 2.5, 2.5, 3.5, 3.5, 5]);
});
