import { describe, expect, it } from "vitest";
import { CoverageIntervals } from "../../src/physics/uncertainty/coverageIntervals.ts";
import type { DrawnReading } from "../../src/physics/uncertainty/drawnReading.ts";
import { ReadingDraws, standardUncertainty } from "../../src/physics/uncertainty/drawnReading.ts";

// Source: JCGM 101:2008, 9.2.2 and 9.2.3: the sum of four variables of standard uncertainty 1, normal:
// 95 % within ±3.92; rectangular: ±3.88 (recalled, from memory; 3.8785 recomputed by convolution).

const draws = 400_000;

/** Scatter of a 95 % end of the sum over repeated runs is about 0.01 at this many draws. */
const scatter = 0.035;

function coverageInterval(values: Float64Array, probability?: number): readonly [number, number] {
  const covered = new CoverageIntervals(1, values.length);
  for (const value of values) covered.add(Float64Array.of(value));
  return covered.intervals(probability)[0] ?? [Number.NaN, Number.NaN];
}

function sumOfFour(quantity: (index: number) => DrawnReading): Float64Array {
  const sum = new Float64Array(draws);
  for (let index = 0; index < 4; index++) {
    const reading = quantity(index);
    expect(standardUncertainty(reading)).toBeCloseTo(1, 12);
    const drawn = new ReadingDraws(reading, 101, draws);
    for (let draw = 0; draw < draws; draw++) {
      sum[draw] = (sum[draw] as number) + drawn.at(draw);
    }
  }
  return sum;
}

describe("sums of four variables, JCGM 101", () => {
  it("9.2.2, normal: 95 % within ±3.92", () => {
    const sum = sumOfFour((index) => ({
      id: `x${index}`,
      mean: 0,
      halfWidth: 0,
      standardError: 1,
    }));
    const [low, high] = coverageInterval(sum);
    expect(Math.abs(low + 3.92)).toBeLessThan(scatter);
    expect(Math.abs(high - 3.92)).toBeLessThan(scatter);
  });

  it("9.2.3, rectangular: 95 % within ±3.88, narrower than normal", () => {
    const sum = sumOfFour((index) => ({
      id: `x${index}`,
      mean: 0,
      halfWidth: Math.sqrt(3),
      standardError: 0,
    }));
    const [low, high] = coverageInterval(sum);
    expect(Math.abs(low + 3.8785)).toBeLessThan(scatter);
    expect(Math.abs(high - 3.8785)).toBeLessThan(scatter);
    const [sharpLow, sharpHigh] = coverageInterval(sum, 1);
    expect(sharpHigh).toBeLessThanOrEqual(4 * Math.sqrt(3));
    expect(sharpLow).toBeGreaterThanOrEqual(-4 * Math.sqrt(3));
  });
});
