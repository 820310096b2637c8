import { describe, expect, it } from "vitest";
import type { Fitment } from "../../../src/physics/fitment.ts";
import { scaledBuilds, spacersByInch } from "../../../src/physics/prescription/candidates.ts";
import { type Prescription, prescribeSteps } from "../../../src/physics/prescription/prescribe.ts";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { demoFitment } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { finished } from "./exhaustive.ts";

/** Answers that were given once and were wrong; each must stay away. */
function prescribed(fitment: Fitment): Prescription {
  return finished(
    prescribeSteps(fitment, scaledBuilds(fitment.stop), {
      samples: 10_000,
      spacersMm: spacersByInch,
    }),
  );
}

const words = ({ first, message, remarks }: Prescription) =>
  [first, message, ...remarks].map(inModelUnits).join(" ");

const inch = 25.4;

describe("a stop that wants 2 1/4 in more on a gap of 1 1/4 in", () => {
  // A stop of 130 mm with 71.5 mm of work to do, and a tire that touches after 40 mm of closing or so.
  const arm = demoFitment("arm-needs-taller");
  const tight: Fitment = {
    ...arm,
    stop: demoFitment("axle-towing-early").stop,
    corners: arm.corners.map((corner) => ({
      ...corner,
      gap: within(1.25 * inch, 1),
      limits: [tyreLimit(within(110, 2))],
    })),
  };
  const prescription = prescribed(tight);

  it("is not made taller than its gap", () => {
    const added = prescription.none ? 0 : prescription.spacerMm;
    expect(added).toBeLessThanOrEqual(1.25 * inch);
    for (const height of prescription.none
      ? prescription.freed.map(({ trial }) => trial.combination.spacerMm)
      : []) {
      expect(height).toBeLessThanOrEqual(1.25 * inch + 60);
    }
  });

  it("is told that nothing fits, in one sentence, without a part to fit beside it", () => {
    expect(prescription.none).toBe(true);
    const told = inModelUnits(prescription.message);
    expect(told.match(/\. /g)).toBeNull();
    expect(told).not.toMatch(/\bFit\b|stiffer stop at this height/);
  });
});

describe("a stop that is met too early", () => {
  const early = uprightStrut({
    gap: within(4, 1),
    limits: [tyreLimit(within(140, 2))],
    fitment: { ride: { ...ride, payloadPerCornerKg: 0 } },
  });
  const prescription = prescribed(early);

  it("is not to be made shorter than a stop can be, nor by more than it is high", () => {
    expect(words(prescription)).not.toMatch(/shorter/);
  });

  it("is not to carry less where it carries nothing", () => {
    expect(words(prescription)).not.toMatch(/no more than|With no payload/);
    if (prescription.none) {
      expect(prescription.freed.map(({ kind }) => kind)).not.toContain("payload");
    }
  });
});

it("one thing is said to do, and it was tested with everything that goes with it", () => {
  const wants = uprightStrut({ gap: within(60, 1), limits: [tyreLimit(exact(80))] });
  const prescription = prescribed(wants);
  if (prescription.none) throw new Error("a spacer fits here");
  expect(inModelUnits(prescription.message).match(/\.( |$)/g)).toHaveLength(1);
  expect(prescription.trial.judgement.blocked).toEqual([]);
  expect(prescription.trial.assessment.verdict).toBe(prescription.verdict);
});
