import { describe, expect, it } from "vitest";
import { assessFitment, assessStatic, completeAssessment } from "../../../src/physics/assess.ts";
import type { Check, Corner, Fitment, Ride, RoadClass } from "../../../src/physics/fitment.ts";
import type { RoadTravel } from "../../../src/physics/road/roadTravel.ts";
import { cornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import type { CornerDraws } from "../../../src/physics/uncertainty/cornerDraws.ts";
import { clearanceCheck } from "../../../src/physics/verdict/clearance.ts";
import { earlyContactCheck } from "../../../src/physics/verdict/earlyContact.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, ride, tyreLimit, uprightStrut } from "../staticFitments.ts";
import { evidenceOf } from "./evidenceOf.ts";

const fitment = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(77))] });

function told({ id, state, reading, sentence }: Check): string {
  return `${id} ${state} ${reading ?? "-"}: ${inModelUnits(sentence)}`;
}

const evidence = (draws: Partial<CornerDraws>, road: Partial<RoadTravel> = {}) =>
  evidenceOf(fitment, { draws, road });

describe("clearance without an interval", () => {
  it("is told by the mean alone", () => {
    expect(told(clearanceCheck(evidence({})))).toBe(
      "clearance care left.gap: The stop is fully compressed first, but you can't count on the 5.0 mm wanted before the tire touches: there are 2.0 mm.",
    );
  });
});

describe("early contact that cannot be worked out", () => {
  const start = "earlyContact unsure left.gap: Can't tell how often the stop touches.";

  it("names the fault, and where that names no reading the gap", () => {
    const fault = { code: "any", sentence: ["Check the readings."] };
    expect(told(earlyContactCheck(evidence({}, { faults: [fault] })))).toBe(
      `${start} Check the readings.`,
    );
    const named = { ...fault, reading: "ride.tyreRateNPerMm" };
    expect(told(earlyContactCheck(evidence({}, { faults: [named] })))).toBe(
      "earlyContact unsure ride.tyreRateNPerMm: Can't tell how often the stop touches. Check the readings.",
    );
  });

  it("asks for the gap where nothing else is to blame", () => {
    expect(told(earlyContactCheck(evidence({})))).toBe(
      `${start} Re-measure the left gap, more closely if you can.`,
    );
  });
});

describe("a stop made to carry whose curve is an estimate", () => {
  const { payloadPerCornerKg: _, ...noPayload } = ride;
  const carrying = (change: Ride): Fitment => ({
    ...fitment,
    stop: { ...fitment.stop, duty: "carry", estimated: { how: "estimate", forceShare: 0.3 } },
    ride: change,
  });
  const early = (one: Fitment) => {
    const [corner] = unwrapped(assessStatic(one, { samples: 10_000 })).corners;
    const check = corner?.checks.find(({ id }) => id === "earlyContact");
    if (check === undefined) throw new Error("no check");
    return told(check);
  };

  it("asks for the payload before it speaks of the estimate", () => {
    expect(early(carrying(noPayload))).toBe(
      "earlyContact unsure ride.payloadPerCornerKg: Can't tell how often the stop touches: not known is the payload. Weigh, look up or estimate it.",
    );
  });
});

describe("a whole answer", () => {
  it("keeps a corner whose events were not run as it was", () => {
    const assessed = unwrapped(assessStatic(fitment, { samples: 10_000 }));
    expect(completeAssessment(fitment, assessed, []).corners).toEqual(assessed.corners);
    const whole = completeAssessment(fitment, assessed, [
      cornerDynamics(fitment, fitment.corners[0] as Corner),
    ]);
    expect(whole).toEqual(unwrapped(assessFitment(fitment, { samples: 10_000 })));
  });

  it("refuses a road class that there is not", () => {
    const rules = { roadClass: "F" as RoadClass };
    expect(refusal(assessStatic({ ...fitment, rules }))).toBe(
      "rulesOutOfRange: The road class must be one of A to E.",
    );
  });

  it("names a length of the layout that was not measured", () => {
    const layout = { kind: "arm", readings: { pivotToOuter: exact(300) } } as Fitment["layout"];
    expect(refusal(assessStatic({ ...fitment, layout }))).toBe(
      "readingMissing (pivotToStop): There is no value for the distance from pivot to stop. Measure it.",
    );
  });
});
