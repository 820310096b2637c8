import { describe, expect, it } from "vitest";
import {
  upcrossingsPerKm,
  zeroUpcrossingsPerSecond,
} from "../../../src/physics/road/levelCrossings.ts";
import { travelVariance } from "../../../src/physics/road/roadResponse.ts";
import { roadVelocityIntensity } from "../../../src/physics/road/roughness.ts";
import { byClosedForm, workedCase } from "../../published/dahlberg1978.ts";
import { stateMatrix } from "../../published/support/lyapunovCar.ts";
import { measured, simulate, simulatedVariances } from "./linearQuarterCar.ts";

/* The closed forms of Dahlberg and of Rice against long seeded simulations of the same quarter car. */

const speed = 60 / 3.6;
const intensity = roadVelocityIntensity("C", speed);

describe("a long seeded simulation of the quarter car on a rough road", () => {
  it("has the closed forms' variances within its 99 % confidence interval of ± 4 % or less", () => {
    const simulated = simulatedVariances(stateMatrix(workedCase), intensity, {
      seed: 20260502,
      seconds: 12_000,
      stepS: 0.002,
      batches: 60,
    });
    const wanted = byClosedForm(workedCase, intensity);
    for (const name of ["travel", "travelSpeed", "sprung", "tyre"] as const) {
      const { mean, halfWidth99 } = simulated[name];
      expect(halfWidth99 / mean, name).toBeLessThan(0.04);
      expect(Math.abs(mean - wanted[name]), name).toBeLessThan(halfWidth99);
    }
  });

  it("passes levels as often as Rice's formula says, within its 99 % confidence interval", () => {
    const sigma = Math.sqrt(travelVariance(intensity, 560, 2700));
    const zeroUpcrossings = zeroUpcrossingsPerSecond(240_000, 560);
    const levels = [0, sigma, 2 * sigma, 2.5 * sigma];
    const options = { seed: 19_440_701, seconds: 12_000, stepS: 0.002, batches: 60 };
    const secondsPerBatch = options.seconds / options.batches;
    const counts = levels.map(() => new Float64Array(options.batches));
    let before = 0;
    simulate(stateMatrix(workedCase), intensity, options, (step, x) => {
      const travel = -(x[0] as number);
      const batch = Math.min(
        options.batches - 1,
        Math.floor((step * options.stepS) / secondsPerBatch),
      );
      levels.forEach((level, index) => {
        const count = counts[index] as Float64Array;
        if (before <= level && travel > level) count[batch] = (count[batch] as number) + 1;
      });
      before = travel;
    });
    levels.forEach((level, index) => {
      const perKm = upcrossingsPerKm(1000 * level, {
        sigma: 1000 * sigma,
        zeroUpcrossings,
        speed,
        kurtosis: 3,
      });
      const perSecond = [...(counts[index] as Float64Array)].map((n) => n / secondsPerBatch);
      const { mean, halfWidth99 } = measured(perSecond);
      expect(halfWidth99 / mean).toBeLessThan(index === 3 ? 0.15 : 0.06);
      expect(Math.abs(mean - (perKm * speed) / 1000)).toBeLessThan(halfWidth99);
    });
  });
});
