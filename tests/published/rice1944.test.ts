import { describe, expect, it } from "vitest";
import {
  levelPassedPerKm,
  upcrossingsPerKm,
  zeroUpcrossingsPerSecond,
} from "../../src/physics/road/levelCrossings.ts";
import { travelVariance } from "../../src/physics/road/roadResponse.ts";
import { roadVelocityIntensity } from "../../src/physics/road/roughness.ts";
import { measured, simulate } from "./linearQuarterCar.ts";

/*
 * Rate of level crossings, Rice, Bell Syst. Tech. J. 23/24 (1944/45): (σ̇/2πσ)·exp(−z²/2σ²) (from
 * memory), against counted crossings of a simulated quarter car.
 */

const speed = 60 / 3.6;
const intensity = roadVelocityIntensity("C", speed);
const sigma = Math.sqrt(travelVariance(intensity, 560, 2700));
const zeroUpcrossings = zeroUpcrossingsPerSecond(240_000, 560);

describe("level crossings (Rice 1944/45)", () => {
  it("counts what a long seeded simulation counts, within its 99 % confidence interval", () => {
    const a = [
      [0, 1, 0, -1],
      [-28_000 / 505, -2700 / 505, 0, 2700 / 505],
      [0, 0, 0, 1],
      [28_000 / 55, 2700 / 55, -240_000 / 55, -2700 / 55],
    ];
    const levels = [0, sigma, 2 * sigma, 2.5 * sigma];
    const options = { seed: 19_440_701, seconds: 12_000, stepS: 0.001, batches: 60 };
    const secondsPerBatch = options.seconds / options.batches;
    const counts = levels.map(() => new Float64Array(options.batches));
    let before = 0;
    simulate(a, intensity, options, (step, x) => {
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
    const wanted = levels.map(
      (level) =>
        (upcrossingsPerKm(1000 * level, 1000 * sigma, zeroUpcrossings, speed) * speed) / 1000,
    );
    levels.forEach((_, index) => {
      const perSecond = [...(counts[index] as Float64Array)].map((n) => n / secondsPerBatch);
      const { mean, halfWidth99 } = measured(perSecond);
      expect(halfWidth99 / mean).toBeLessThan(index === 3 ? 0.15 : 0.06);
      expect(Math.abs(mean - (wanted[index] as number))).toBeLessThan(halfWidth99);
    });
  });

  it("inverts: the level passed N times per km is passed N times per km", () => {
    for (const allowed of [0.01, 2, 50, 150]) {
      const level = levelPassedPerKm(allowed, 9.3, zeroUpcrossings, speed);
      expect(upcrossingsPerKm(level, 9.3, zeroUpcrossings, speed)).toBeCloseTo(allowed, 9);
    }
  });

  it("never passes a level below the mean more often than the mean", () => {
    const mean = upcrossingsPerKm(0, 9.3, zeroUpcrossings, speed);
    expect(upcrossingsPerKm(-20, 9.3, zeroUpcrossings, speed)).toBe(mean);
    expect(levelPassedPerKm(2 * mean, 9.3, zeroUpcrossings, speed)).toBe(0);
  });
});
