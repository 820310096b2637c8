import { describe, expect, it } from "vitest";
import {
  type DrawnReading,
  ReadingDraws,
  standardUncertainty,
} from "../../src/physics/uncertainty/drawnReading.ts";
import {
  combinedUncertainty,
  doubtShares,
  firstOrderContributions,
} from "../../src/physics/uncertainty/firstOrder.ts";

// Source: JCGM 100:2008, H.1, end-gauge calibration; inputs as quoted in the documentation of the library
// GTC, contributions and results recalled, from memory:
// l = ls + d − ls·(δα·θ + αs·δθ); u(ls) = 25 nm, u(d) = 9.7 nm, αs = (11.5 ± 2)·10⁻⁶/°C, δα = ±10⁻⁶/°C,
// θ = −0.1 °C with u = 0.41 °C, δθ = ±0.05 °C. Contributions 25, 9.7, 2.9 and 16.6 nm; u(l) = 32 nm,
// with the terms of second order 34 nm.

const standardLengthNm = 50_000_623;

const normal = (id: string, mean: number, uncertainty: number): DrawnReading => ({
  id,
  mean,
  halfWidth: 0,
  standardError: uncertainty,
});
const rectangular = (id: string, mean: number, halfWidth: number): DrawnReading => ({
  id,
  mean,
  halfWidth,
  standardError: 0,
});

const inputs = [
  normal("ls", standardLengthNm, 25),
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

describe("end-gauge calibration, JCGM 100, H.1", () => {
  const contributions = firstOrderContributions(
    inputs,
    (index, value) => length(means.with(index, value)),
    length(means),
  );
  const contribution = (id: string) =>
    Math.abs(contributions[inputs.findIndex((input) => input.id === id)] ?? Number.NaN);

  it("has the inputs' standard uncertainties", () => {
    expect(standardUncertainty(inputs[2] as DrawnReading)).toBeCloseTo(0.58e-6, 8);
    expect(standardUncertainty(inputs[4] as DrawnReading)).toBeCloseTo(1.2e-6, 7);
    expect(standardUncertainty(inputs[5] as DrawnReading)).toBeCloseTo(0.029, 3);
  });

  it("gives the contributions and 32 nm in first order", () => {
    expect(contribution("ls")).toBeCloseTo(25, 1);
    expect(contribution("d")).toBeCloseTo(9.7, 1);
    expect(contribution("δα")).toBeCloseTo(2.9, 1);
    expect(contribution("δθ")).toBeCloseTo(16.6, 1);
    // Where the other factor is zero the first-order term vanishes.
    expect(contribution("θ")).toBeCloseTo(0, 6);
    expect(contribution("αs")).toBeCloseTo(0, 6);
    expect(Math.round(combinedUncertainty(contributions))).toBe(32);
  });

  it("names the standard's length as the first cause of doubt", () => {
    const shares = doubtShares(inputs, contributions);
    expect(shares[0]?.reading).toBe("ls");
    expect(shares[1]?.reading).toBe("δθ");
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it("gives 34 nm from the draws, which hold the terms of second order", () => {
    const draws = 200_000;
    const columns = inputs.map((input) => new ReadingDraws(input, 100, draws));
    let sum = 0;
    let squares = 0;
    for (let draw = 0; draw < draws; draw++) {
      const deviation = length(columns.map((column) => column.at(draw))) - length(means);
      sum += deviation;
      squares += deviation * deviation;
    }
    const deviation = Math.sqrt(squares / draws - (sum / draws) ** 2);
    expect(Math.round(deviation)).toBe(34);
  });
});
