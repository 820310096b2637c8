import { isotonicRegression } from "../../src/physics/stopTests/isotonicRegression.ts";
import { Noise } from "../physics/stopTests/generatedTests.ts";
import { publishedSource } from "./support/published.ts";

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

function worst(): number {
  const noise = new Noise(1972);
  let most = 0;
  for (let length = 0; length <= 60; length++) {
    const values = Array.from({ length }, () => 200 * noise.uniform() - 100);
    const weights = Array.from({ length }, () => 0.1 + 9.9 * noise.uniform());
    const own = fitted(values, weights);
    for (const [place, value] of minMax(values, weights).entries()) {
      most = Math.max(most, Math.abs(value - (own[place] ?? Number.NaN)));
    }
  }
  return most;
}

export const barlow1972 = publishedSource(
  "Barlow et al., Statistical Inference under Order Restrictions (1972), theorem 1.4",
  "from memory",
  (published) => {
    published("61 seeded sequences: greatest difference to the min-max formula", 0, worst, 1e-9);
    published("1 3 2 4 3 5 with equal weights", "1 2.5 2.5 3.5 3.5 5", () =>
      fitted([1, 3, 2, 4, 3, 5], [1, 1, 1, 1, 1, 1]).join(" "),
    );
  },
);
