import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LevelMean } from "../../../src/physics/stopTests/levelMeans.ts";
import { smoothedLevels } from "../../../src/physics/stopTests/smoothedLevels.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";
import { progressive } from "../../support/testMachine/trueStop.ts";

const force = progressive(60, 0.03);

function levels(noiseN: number, seed = 1, count = 40): readonly LevelMean[] {
  const source = RandomSource.stream(seed, "levels");
  return Array.from({ length: count }, (_, at) => {
    const depthMm = 1.1 * (at + 0.5);
    return {
      depthMm,
      forceN: force(depthMm) + noiseN * source.nextNormal(),
      standardErrorN: noiseN,
      rows: 500,
    };
  });
}

function spread(of: readonly LevelMean[]): number {
  return Math.sqrt(
    of.reduce((sum, { depthMm, forceN }) => sum + (forceN - force(depthMm)) ** 2, 0) / of.length,
  );
}

describe("levels of a ramp, their noise taken out", () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])("lie twice as near to the stop or more: draw %i", (seed) => {
    const noisy = levels(20, seed);
    expect(spread(smoothedLevels(noisy))).toBeLessThan(0.5 * spread(noisy));
  });

  it("stay where there is no noise, within 2 in 10,000 of the greatest force", () => {
    expect(spread(smoothedLevels(levels(0)))).toBeLessThan(2e-4 * force(44));
  });

  it("do not follow one level whose own scatter is wide", () => {
    const given = levels(2).map((level, at) =>
      at === 39 ? { ...level, forceN: level.forceN - 400, standardErrorN: 80 } : level,
    );
    const smooth = smoothedLevels(given);
    expect(spread(smooth.slice(0, 35))).toBeLessThan(2);
  });

  it("of a straight line are that line, whatever it is and however the levels lie", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.2, max: 3, noNaN: true }), { minLength: 8, maxLength: 40 }),
        fc.double({ min: -50, max: 200, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (steps, slope, offset) => {
          let depthMm = 0;
          const line = steps.map((step) => {
            depthMm += step;
            return { depthMm, forceN: offset + slope * depthMm, standardErrorN: 3, rows: 50 };
          });
          for (const [at, { forceN }] of smoothedLevels(line).entries()) {
            const scale = 1 + Math.abs(offset) + Math.abs(slope) * depthMm;
            expect(Math.abs(forceN - (line[at]?.forceN ?? 0))).toBeLessThan(1e-6 * scale);
          }
        },
      ),
    );
  });

  it("stay as they are where there are fewer than eight", () => {
    const few = levels(20, 1, 7);
    expect(smoothedLevels(few)).toBe(few);
  });
});
