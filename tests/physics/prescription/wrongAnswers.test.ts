import { describe, expect, it } from "vitest";
import type { Fitment } from "../../../src/physics/fitment.ts";
import {
  leastStopHeightMm,
  scaledBuilds,
  spacersByInch,
} from "../../../src/physics/prescription/candidates.ts";
import { type Prescription, prescribeSteps } from "../../../src/physics/prescription/prescribe.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { finished } from "./exhaustive.ts";

/*
 * Answers that were given once and were wrong, each by its words; each must stay away. Two more of them: a
 * stop that can't be mounted, in green (tests/screens/ranking/RankingPlace.test.tsx), and "No, not taller"
 * after a payload word alone (tests/records/quickCheck/quickCheckQuestion.test.ts).
 */
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

/** Every combination that is told, as what to do or as what another change would let fit. */
function combinations(prescription: Prescription) {
  return prescription.none
    ? prescription.freed.map(({ decided, kind, amount }) => ({
        ...decided.combination,
        kind,
        amount,
      }))
    : [{ ...prescription.trial.combination, kind: "asItStands" as const, amount: 0 }];
}

const inch = 25.4;

// A stop of 130 mm with 71.5 mm of work to do, on a gap of 1 1/4 in, and a tire that touches early.
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

// A stop 2.05 in high that is met after a quarter inch.
const early = uprightStrut({
  gap: within(0.25 * inch, 1),
  limits: [tyreLimit(within(140, 2))],
  fitment: { ride: { ...ride, payloadPerCornerKg: 0 } },
});
const low: Fitment = { ...early, stop: { ...early.stop, freeHeight: within(2.05 * inch, 1) } };

describe("“taller by 2.22 in” on a gap of 1 1/4 in", () => {
  it("nothing that is told is taller than the gap, or than the gap with the body raised as it says", () => {
    for (const { candidate, spacerMm, kind, amount } of combinations(prescribed(tight))) {
      const taller = meanOf(candidate.stop.freeHeight) - meanOf(tight.stop.freeHeight) + spacerMm;
      if (candidate.stop.duty === "carry") continue;
      expect(taller).toBeLessThanOrEqual(1.25 * inch + (kind === "higher" ? amount : 0));
    }
    expect(words(prescribed(tight))).not.toMatch(/\btaller\b/);
  });
});

describe("“shorter by 0.45 in, up to 2.12 in” for a stop 2.05 in high", () => {
  it("no stop is told shorter than one can be made, and no height to take off", () => {
    const prescription = prescribed(low);
    expect(words(prescription)).not.toMatch(/shorter/);
    for (const { candidate, spacerMm } of combinations(prescription)) {
      const heightMm = meanOf(candidate.stop.freeHeight) + spacerMm;
      expect(heightMm).toBeGreaterThanOrEqual(leastStopHeightMm);
    }
  });
});

describe("four instructions at once with no tested combination", () => {
  it("one thing is said to do, and it was tested with everything that goes with it", () => {
    const wants = uprightStrut({ gap: within(60, 1), limits: [tyreLimit(exact(80))] });
    const prescription = prescribed(wants);
    if (prescription.none) throw new Error("a spacer fits here");
    expect(inModelUnits(prescription.message).match(/\.( |$)/g)).toHaveLength(1);
    expect(prescription.trial.judgement.blocked).toEqual([]);
    expect(prescription.trial.assessment.verdict).toBe(prescription.verdict);
  });
});

describe("“no height fits” and “a stiffer stop at this height” together", () => {
  it("that nothing fits is one sentence, without a part to fit beside it", () => {
    const prescription = prescribed(tight);
    expect(prescription.none).toBe(true);
    const told = inModelUnits(prescription.message);
    expect(told.match(/\. /g)).toBeNull();
    expect(told).not.toMatch(/\bFit\b|stiffer stop at this height/);
  });
});

describe("“less payload” with no payload", () => {
  it("is neither told nor tried where it carries nothing", () => {
    const prescription = prescribed(early);
    expect(words(prescription)).not.toMatch(/no more than|With no payload/);
    expect(combinations(prescription).map(({ kind }) => kind)).not.toContain("payload");
  });
});
