import { describe, expect, it } from "vitest";
import { assessFitment, assessStatic } from "../../src/physics/assess.ts";
import { demoNames } from "../support/demoRecords.ts";
import { compareWithVectors, tolerances, vectorCorner } from "../vectors/vectors.ts";
import { demoFitment, unwrapped } from "./demoFitments.ts";

// Source: vectors/examples.json, an independent implementation of the model in another language.

const figures = [
  "leverRatio",
  "leverRatioAtFullStop",
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

describe.each(demoNames)("%s", (name) => {
  const fitment = demoFitment(name);

  it("has every static figure within 1e-6, relative, without an absolute floor", () => {
    for (const corner of unwrapped(assessStatic(fitment)).corners) {
      const vector = vectorCorner(fitment.id, corner.side);
      expect(corner.linkage).toBe(vector.linkage);
      for (const figure of figures) {
        const wanted = vector[figure] ?? null;
        const got = corner[figure];
        if (wanted === null || got === null) {
          expect(got, `${corner.side} ${figure}`).toBe(wanted);
          continue;
        }
        const deviation = Math.abs(got - Number(wanted));
        expect(deviation, `${corner.side} ${figure}`).toBeLessThanOrEqual(
          tolerances.static * Math.abs(Number(wanted)),
        );
      }
    }
  });

  it("agrees with every figure, interval, probability and state of the vectors", () => {
    const { corners } = unwrapped(assessFitment(fitment));
    const { compared, disagreements } = compareWithVectors(
      fitment.id,
      corners.map((corner) => ({ ...corner })),
    );
    expect(disagreements).toEqual([]);
    expect(compared).toBeGreaterThan(25);
  });
});
