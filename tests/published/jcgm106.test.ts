import { describe, expect, it } from "vitest";
import { assessStatic } from "../../src/physics/assess.ts";
import type { Fitment } from "../../src/physics/fitment.ts";
import { unwrapped } from "../physics/demoFitments.ts";

// Source: JCGM 106:2012, clause 7: for a normal measurand P(conforming) = Φ((y − limit)/u).
// Recalled, from memory.

/** Φ by Simpson's rule on the density. */
function normalDistribution(x: number): number {
  const strips = 2000;
  const width = (x + 10) / strips;
  let sum = 0;
  for (let strip = 0; strip < strips; strip++) {
    const density = (place: number) => Math.exp(-0.5 * place * place) / Math.sqrt(2 * Math.PI);
    const from = -10 + strip * width;
    sum += (width / 6) * (density(from) + 4 * density(from + width / 2) + density(from + width));
  }
  return sum;
}

/**
 * A strut that stands upright: wheel travel equals closing, so that the reserve is limit − gap − 30.
 * The limit is read twice, 2d apart: mean m, u = s/√2 = d, with no tool tolerance: a normal reserve.
 */
function upright(limit: number, uncertainty: number): Fitment {
  return {
    use: "daily",
    layout: { kind: "strut", readings: {} },
    corners: [
      {
        side: "left",
        gap: { values: [30], tol: 0 },
        limits: [
          {
            kind: "tyre",
            at: "wheel",
            reading: { values: [limit - uncertainty, limit + uncertainty], tol: 0 },
          },
        ],
      },
    ],
    stop: {
      name: "Test stop",
      duty: "impact",
      freeHeight: { values: [60], tol: 0 },
      usableCompressionMm: 30,
      curve: [[30, 3000]],
      damping: null,
      testedAtSpeed: false,
    },
  };
}

describe("probability of conformity, JCGM 106", () => {
  it.each([
    [2, 1],
    [2, -2],
    [3, 1.645],
    [3, 0],
    [1, 2.5],
    [4, -0.5],
  ])("is Φ for a normal reserve with u = %d mm, %d u above what is wanted", (uncertainty, by) => {
    const limit = 60 + 5 + by * uncertainty;
    const { corners } = unwrapped(assessStatic(upright(limit, uncertainty), { samples: 200_000 }));
    const probability = Number(corners[0]?.clearanceProbability);
    expect(Math.abs(probability - normalDistribution(by))).toBeLessThan(0.005);
  });

  // Clause 8 with a threshold of 0.95: accepted where Φ((y − limit)/u) ≥ 0.95, that is y ≥ limit + 1.645 u.
  it.each([
    [65 + 1.8 * 2, "ok"],
    [65 + 1.4 * 2, "care"],
    [60 + 1.8 * 2, "care"],
    [60 + 1.4 * 2, "unsure"],
    [60 - 1.4 * 2, "unsure"],
    [60 - 1.8 * 2, "no"],
  ])("decides at 0.95 and 0.05: a limit at %d mm with u = 2 mm is %s", (limit, state) => {
    const { corners } = unwrapped(assessStatic(upright(limit, 2), { samples: 200_000 }));
    expect(corners[0]?.checks.find(({ id }) => id === "clearance")?.state).toBe(state);
  });
});
