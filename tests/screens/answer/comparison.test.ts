import { describe, expect, it } from "vitest";
import { gapOf } from "../../../src/physics/budget/gap.ts";
import { fitmentWithStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { secantRate } from "../../../src/physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { proposedStop } from "../../../src/screens/answer/compare/proposedStop.ts";
import { tallerStop } from "../../../src/screens/answer/compare/tallerStop.ts";
import { assessed, demoFitment } from "./demoChecks.ts";

const marlow = demoFitment("arm-fits");
const raised = demoFitment("arm-needs-taller");

describe("another stop on the same mount", () => {
  it("closes the gap by what it is taller, and widens its doubt by both heights'", () => {
    const outcome = fitmentWithStop(raised, marlow.stop);
    if (!outcome.ok) throw new Error(outcome.fault.code);
    const [left] = outcome.value.corners;
    // 60 mm against 42 mm: 18 mm taller on a gap of 40 mm ± 1.5 mm, heights ± 1 mm each.
    if (left === undefined) throw new Error("no corner");
    expect(gapOf(outcome.value, left)).toEqual({ ok: true, value: 22 });
    expect(outcome.value.recordedStop).toBe(raised.stop);
    expect(outcome.value.stop.name).toBe("Tall progressive");
  });

  it("is refused where it would be pressed in with the vehicle standing", () => {
    const outcome = fitmentWithStop(marlow, demoFitment("axle-towing-early").stop);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.fault.reading).toBe("left.gap");
    // 130 mm − 60 mm − 21.25 mm
    expect(inModelUnits(outcome.fault.sentence)).toContain("pressed by 48.8 mm");
  });

  it("keeps every other reading", () => {
    const outcome = fitmentWithStop(raised, marlow.stop);
    if (!outcome.ok) throw new Error(outcome.fault.code);
    expect(outcome.value.layout).toEqual(raised.layout);
    expect(outcome.value.corners.map(({ limits }) => limits)).toEqual(
      raised.corners.map(({ limits }) => limits),
    );
  });
});

describe("a taller stop of the same build", () => {
  const taller = tallerStop(raised.stop, 21);

  it("grows in one proportion: same usable share, same stiffness class", () => {
    expect(taller.freeHeight.values).toEqual([63]);
    expect(taller.usableCompressionMm / 63).toBeCloseTo(raised.stop.usableCompressionMm / 42, 12);
    const [before, after] = [stopCurve(raised.stop), stopCurve(taller)];
    if (!before.ok || !after.ok) throw new Error("no curve");
    expect(secantRate(after.value)).toBeCloseTo(secantRate(before.value), 9);
  });

  it("claims no damping that was not tested at its height", () => {
    expect(tallerStop(demoFitment("damper-shaft").stop, 10)).toMatchObject({
      damping: null,
      testedAtSpeed: false,
    });
  });
});

describe("the stiffness class proposed", () => {
  it("is the nearest that works on both sides, and then nothing fails", () => {
    // The vectors: of this strut's classes only 160 N/mm works, on both sides.
    const strut = demoFitment("strut-too-stiff");
    const proposal = proposedStop(strut, assessed(strut));
    if (!proposal?.fitment.ok) throw new Error("no proposal");
    expect(inModelUnits(proposal.name)).toBe("this stop in class 160 N/mm");
    const answer = assessed(proposal.fitment.value);
    expect(answer.corners.map(({ secantRateNPerMm }) => Math.round(secantRateNPerMm))).toEqual([
      160, 160,
    ]);
    expect(answer.verdict).toBe("ok");
  });
});

describe("the height proposed", () => {
  it("is tried on the vehicle, and the clearance then holds", () => {
    const proposal = proposedStop(raised, assessed(raised));
    if (!proposal?.fitment.ok) throw new Error("no proposal");
    const answer = assessed(proposal.fitment.value);
    for (const { checks, mostExtraHeightMm } of answer.corners) {
      expect(checks.find(({ id }) => id === "clearance")?.state).toBe("ok");
      expect(mostExtraHeightMm).toBeGreaterThanOrEqual(0);
    }
  });

  it("is none where the answer proposes none", () => {
    expect(proposedStop(marlow, assessed(marlow))).toBeNull();
    const towing = demoFitment("axle-towing-early");
    expect(proposedStop(towing, assessed(towing))).toBeNull();
  });
});
