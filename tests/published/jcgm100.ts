import {
  type DrawnReading,
  standardUncertainty,
} from "../../src/physics/uncertainty/drawnReading.ts";
import {
  combinedUncertainty,
  doubtShares,
  firstOrderContributions,
} from "../../src/physics/uncertainty/firstOrder.ts";
import { ReadingDraws } from "../../src/physics/uncertainty/readingDraws.ts";
import { publishedSource } from "./support/published.ts";

/*
 * JCGM 100:2008, H.1, end-gauge calibration; inputs as quoted in the documentation of the library GTC,
 * contributions and results recalled, from memory:
 * l = ls + d − ls·(δα·θ + αs·δθ); u(ls) = 25 nm, u(d) = 9.7 nm, αs = (11.5 ± 2)·10⁻⁶/°C, δα = ±10⁻⁶/°C,
 * θ = −0.1 °C with u = 0.41 °C, δθ = ±0.05 °C. Contributions 25, 9.7, 2.9 and 16.6 nm; u(l) = 32 nm,
 * with the terms of second order 34 nm.
 */

const normal = (id: string, mean: number, uncertainty: number): DrawnReading<string> => ({
  id,
  mean,
  halfWidth: 0,
  standardError: uncertainty,
});
const rectangular = (id: string, mean: number, halfWidth: number): DrawnReading<string> => ({
  id,
  mean,
  halfWidth,
  standardError: 0,
});

const inputs = [
  normal("ls", 50_000_623, 25),
  normal("d", 215, 9.7),
  rectangular("δα", 0, 1e-6),
  normal("θ", -0.1, 0.41),
  rectangular("αs", 11.5e-6, 2e-6),
  rectangular("δθ", 0, 0.05),
];

const length = ([
  ls = 0,
  d = 0,
  deltaAlpha = 0,
  theta = 0,
  alpha = 0,
  deltaTheta = 0,
]: readonly number[]) => ls + d - ls * (deltaAlpha * theta + alpha * deltaTheta);

const means = inputs.map(({ mean }) => mean);

const contributions = () =>
  firstOrderContributions(
    inputs,
    (index, value) => length(means.with(index, value)),
    length(means),
  );
const indexOf = (id: string) => inputs.findIndex((input) => input.id === id);

function drawnDeviation(): number {
  const draws = 200_000;
  const columns = inputs.map((input) => new ReadingDraws(input, 100, draws));
  let sum = 0;
  let squares = 0;
  for (let draw = 0; draw < draws; draw++) {
    const deviation = length(columns.map((column) => column.at(draw))) - length(means);
    sum += deviation;
    squares += deviation * deviation;
  }
  return Math.sqrt(squares / draws - (sum / draws) ** 2);
}

export const jcgm100 = publishedSource(
  "JCGM 100:2008, H.1: calibration of an end gauge",
  "from memory",
  (published) => {
    const uncertainty = (id: string) => () =>
      standardUncertainty(inputs[indexOf(id)] as DrawnReading);
    published("u(δα), per °C", 0.58e-6, uncertainty("δα"), 5e-9);
    published("u(αs), per °C", 1.2e-6, uncertainty("αs"), 5e-8);
    published("u(δθ), °C", 0.029, uncertainty("δθ"), 5e-4);
    for (const [id, nanometres] of [
      ["ls", 25],
      ["d", 9.7],
      ["δα", 2.9],
      ["δθ", 16.6],
      // Where the other factor is zero the first-order term vanishes.
      ["θ", 0],
      ["αs", 0],
    ] as const) {
      published(
        `contribution of ${id}, nm`,
        nanometres,
        () => Math.abs(contributions()[indexOf(id)] ?? Number.NaN),
        0.05,
      );
    }
    published("u(l) in first order, nm", 32, () => combinedUncertainty(contributions()), 0.5);
    published("u(l) with second order, from the draws, nm", 34, drawnDeviation, 0.5);
    published("first two causes of the doubt", "ls δθ", () =>
      doubtShares(inputs, contributions())
        .slice(0, 2)
        .map(({ reading }) => reading)
        .join(" "),
    );
    published(
      "shares of the doubt, their sum",
      1,
      () => doubtShares(inputs, contributions()).reduce((sum, { share }) => sum + share, 0),
      1e-12,
    );
  },
);
