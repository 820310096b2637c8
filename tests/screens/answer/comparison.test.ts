import { describe, expect, it } from "vitest";
import { gapOf } from "../../../src/physics/budget/gap.ts";
import { scaledBuilds, spacersByMm } from "../../../src/physics/prescription/candidates.ts";
import { fitmentWithStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { prescribeSteps } from "../../../src/physics/prescription/prescribe.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { prescribedStop } from "../../../src/screens/answer/compare/prescribedStop.ts";
import { finished } from "../../physics/prescription/exhaustive.ts";
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

describe("what is prescribed", () => {
  const set = (name: Parameters<typeof demoFitment>[0]) => {
    const fitment = demoFitment(name);
    const prescription = finished(
      prescribeSteps(fitment, scaledBuilds(fitment.stop), { spacersMm: spacersByMm }),
    );
    return prescribedStop(fitment, { state: "found", prescription, whole: true });
  };

  it("is set against what is fitted, as it was tested", () => {
    // The vectors: of this strut's classes only 160 N/mm works, on both sides.
    const other = set("strut-too-stiff");
    if (other === null) throw new Error("nothing prescribed");
    expect(other.assessment.verdict).toBe(assessed(other.fitment).verdict);
    expect(
      other.assessment.corners.map(({ secantRateNPerMm }) => Math.round(secantRateNPerMm)),
    ).toEqual([160, 160]);
    // No part of a library: it is told as the prescription tells it, not by the fitted stop's name.
    expect(inModelUnits(other.name)).toBe("a softer stop of the same build, class 160 N/mm");
  });

  it("is nothing to set against where it stays as it is", () => {
    expect(set("arm-fits")).toBeNull();
  });
});
