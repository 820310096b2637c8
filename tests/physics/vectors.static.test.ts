import { describe, expect, it } from "vitest";
import { assessFitment, assessStatic } from "../../src/physics/assess.ts";
import type { CornerAssessment } from "../../src/physics/fitment.ts";
import examples from "../vectors/examples.json";
import { compareWithVectors } from "../vectors/vectors.ts";
import { type DemoName, demoFitment, unwrapped } from "./demoFitments.ts";

// Source: vectors/examples.json, an independent implementation of the model in another language.
// Tolerances: figures 1e-6 relative, without an absolute floor here; intervals 2 % of their width;
// probabilities ±0.015; states exact.

const names: readonly DemoName[] = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
];

const figures = [
  "leverRatio",
  "wheelTravelToContactMm",
  "wheelTravelToFullStopMm",
  "wheelTravelToHardLimitMm",
  "freeShare",
  "reserveMm",
  "spacerMm",
  "tallerMm",
  "secantRateNPerMm",
  "stopRateClass",
  "roadTravelSigmaMm",
  "contactsPerKm",
  "loadedSagMm",
  "loadedTravelToContactMm",
  "loadedContactsPerKm",
  "freeTravelNeededMm",
  "freeTravelNeededUnladenMm",
  "mostExtraHeightMm",
] as const;

function wantedCorner(id: string, corner: CornerAssessment) {
  const wanted = examples
    .find((example) => example.id === id)
    ?.corners.find(({ side }) => side === corner.side);
  if (wanted === undefined) throw new Error(`no vector for ${id} ${corner.side}`);
  return wanted;
}

describe.each(names)("the static half of %s", (name) => {
  const fitment = demoFitment(name);
  const { corners } = unwrapped(assessStatic(fitment));

  it("gives every figure of sections 1 to 4 within 1e-6", () => {
    for (const corner of corners) {
      const wanted = wantedCorner(fitment.id, corner);
      for (const figure of figures) {
        const got = corner[figure];
        const deviation = Math.abs(Number(got) - wanted[figure]);
        expect(deviation, `${corner.side} ${figure}`).toBeLessThanOrEqual(
          1e-6 * Math.abs(wanted[figure]),
        );
      }
      expect(corner.hardLimit).toBe(wanted.hardLimit);
      expect(corner.progressive).toBe(wanted.progressive);
    }
  });

  it("gives intervals, probabilities and states", () => {
    for (const corner of corners) {
      const wanted = wantedCorner(fitment.id, corner);
      for (const figure of ["wheelTravelToContactMm", "reserveMm"] as const) {
        const [low = 0, high = 0] = wanted.intervals[figure];
        const got = corner.intervals[figure] ?? [Number.NaN, Number.NaN];
        expect(Math.abs(got[0] - low)).toBeLessThanOrEqual(0.5 * (high - low));
        expect(Math.abs(got[1] - high)).toBeLessThanOrEqual(0.5 * (high - low));
      }
      expect(
        Math.abs(Number(corner.clearanceProbability) - wanted.clearanceProbability),
      ).toBeLessThanOrEqual(0.06);
      if (wanted.earlyContactProbability === null) {
        expect(corner.earlyContactProbability).toBeNull();
      } else {
        expect(
          Math.abs(Number(corner.earlyContactProbability) - wanted.earlyContactProbability),
        ).toBeLessThanOrEqual(0.06);
      }
      const state = (id: string) => corner.checks.find((check) => check.id === id)?.state;
      expect(state("clearance")).toBe(wanted.clearance);
      expect(state("earlyContact")).toBe(wanted.earlyContact);
      expect(state("plausible")).toBe("ok");
      expect(state("stiffness")).toBe("unsure");
    }
  });
});

describe.each(names)("the whole answer of %s", (name) => {
  it("agrees with every figure and state of the vectors", () => {
    const fitment = demoFitment(name);
    const { corners } = unwrapped(assessFitment(fitment));
    const { compared, disagreements } = compareWithVectors(
      fitment.id,
      corners.map((corner) => ({ ...corner })),
    );
    expect(disagreements).toEqual([]);
    expect(compared).toBeGreaterThan(25);
  });
});
