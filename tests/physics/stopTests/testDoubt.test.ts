import { describe, expect, test } from "vitest";
import { allowedLaws, staticShareDoubt } from "../../../src/physics/stop/allowedLaws.ts";
import { analyseRows } from "../../../src/physics/stopTests/analyseRows.ts";
import { analyseTimed } from "../../../src/physics/stopTests/analyseTimed.ts";
import { foundStop } from "../../../src/physics/stopTests/foundStop.ts";
import { testDoubt } from "../../../src/physics/stopTests/testDoubt.ts";
import { designs, trueStops } from "../../support/testMachine/designs.ts";
import { measure } from "../../support/testMachine/testMachine.ts";
import type { TrueStop } from "../../support/testMachine/trueStop.ts";
import { demoFitment } from "../demoFitments.ts";
import { given } from "./outcomes.ts";

function read(stop: TrueStop) {
  const { timeS, depthMm, forceN } = measure(stop, (designs.sines as () => never)(), {
    samplesPerS: 500,
    whiteN: 15,
    whiteMm: 0.005,
  });
  return given(analyseTimed({ kind: "cycles", timeS, displacementMm: depthMm, forceN }));
}

const { testDoubt: _own, ...base } = demoFitment("foam-stop-tested").stop;

describe("what a test leaves open, as a stop takes it along", () => {
  test("is sixteen laws about the one found, each fit to be a stop's, and the fastest row", () => {
    const analysis = read(trueStops.everything as TrueStop);
    const found = foundStop(analysis);
    const doubt = testDoubt(analysis);
    expect(doubt?.laws).toHaveLength(16);
    expect(doubt?.fastestMmPerS).toBeCloseTo(found?.fastestMmPerS ?? 0, -1);
    const taken = allowedLaws({ ...base, testedAtSpeed: true, ...(doubt && { testDoubt: doubt }) });
    expect(taken).toHaveLength(16);
    const mean = taken.reduce((sum, law) => sum + law.restLoss, 0) / 16;
    expect(Math.abs(mean - (found?.restLoss ?? 0))).toBeLessThan(found?.doubt.restLoss ?? 0);
  });

  test("is nothing where the test tells no loss", () => {
    expect(testDoubt(read(trueStops.lossless as TrueStop))).toBeNull();
  });

  test("has the ± of each part where rows are in no order of time", () => {
    const rows = [0, 100, 200, 300, -100, -200, -300].flatMap((speed) =>
      [10, 20, 30, 40].map((depth, index) => ({
        depth,
        speed,
        // Off by up to 8 N, so that there is a doubt.
        force: 100 * depth + 0.5 * speed + 8 * Math.sin(37 * speed + 11 * index),
      })),
    );
    const analysis = given(
      analyseRows({
        kind: "rows",
        depthMm: Float64Array.from(rows, ({ depth }) => depth),
        speedMmPerS: Float64Array.from(rows, ({ speed }) => speed),
        forceN: Float64Array.from(rows, ({ force }) => force),
      }),
    );
    const found = foundStop(analysis);
    const doubt = testDoubt(analysis);
    expect(doubt?.fastestMmPerS).toBe(300);
    for (const [index, [, into]] of (found?.damping ?? []).entries()) {
      const drawn = (doubt?.laws ?? []).map(({ damping }) => damping?.[index]?.[1] ?? 0);
      const spread = Math.sqrt(
        drawn.reduce((sum, value) => sum + (value - into) ** 2, 0) / drawn.length,
      );
      // The standard deviation of 16 draws is known within some 40 % at 95 %.
      const standard = (found?.doubt.damping[index]?.[1] ?? 0) / 1.96;
      expect(spread).toBeGreaterThanOrEqual(0.5 * standard);
      expect(spread).toBeLessThanOrEqual(1.5 * standard);
    }
  });

  test("tells how far the force at rest may be off", () => {
    const laws = [0.8, 1].map((staticShare) => ({ damping: null, staticShare }));
    const stop = { ...base, staticShare: 0.9, testDoubt: { fastestMmPerS: 500, laws } };
    expect(staticShareDoubt(stop)).toBeCloseTo(0.1 / 0.9, 12);
    expect(staticShareDoubt({ ...stop, testedAtSpeed: false })).toBe(0);
    expect(allowedLaws(base)).toEqual([]);
  });
});
