import { describe, expect, it } from "vitest";
import {
  levelPassedPerKm,
  upcrossingsPerKm,
  zeroUpcrossingsPerSecond,
} from "../../../src/physics/road/levelCrossings.ts";

const speed = 60 / 3.6;

describe("level crossings", () => {
  it("invert: the level passed N times per km is passed N times per km", () => {
    const zeroUpcrossings = zeroUpcrossingsPerSecond(240_000, 560);
    for (const allowed of [0.01, 2, 50, 150]) {
      const level = levelPassedPerKm(allowed, 9.3, zeroUpcrossings, speed);
      expect(level).toBeGreaterThan(0);
      expect(upcrossingsPerKm(level, 9.3, zeroUpcrossings, speed)).toBeCloseTo(allowed, 9);
    }
  });

  it("never pass a level below the mean more often than the mean", () => {
    const zeroUpcrossings = zeroUpcrossingsPerSecond(240_000, 560);
    const mean = upcrossingsPerKm(0, 9.3, zeroUpcrossings, speed);
    expect(upcrossingsPerKm(-20, 9.3, zeroUpcrossings, speed)).toBe(mean);
    expect(levelPassedPerKm(2 * mean, 9.3, zeroUpcrossings, speed)).toBe(0);
    expect(levelPassedPerKm(mean, 9.3, zeroUpcrossings, speed)).toBe(0);
  });
});
