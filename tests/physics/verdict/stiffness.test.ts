import { describe, expect, it } from "vitest";
import type { Check } from "../../../src/physics/fitment.ts";
import type { CornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import {
  stiffnessCheck,
  stiffnessNotComputed,
  stopClasses,
} from "../../../src/physics/verdict/stiffness.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

function dynamics(change: Partial<CornerDynamics>): CornerDynamics {
  return {
    side: "left",
    events: null,
    undampedEvents: null,
    fromTest: null,
    stopItselfPasses: true,
    ownFailures: [],
    classesThatWork: null,
    classWindow: null,
    failures: [],
    stiffnessSide: null,
    faults: [],
    ...change,
  };
}

function told({ id, state, side, reading, sentence }: Check): string {
  return `${id} ${state} ${side ?? "-"} ${reading ?? "-"}: ${inModelUnits(sentence)}`;
}

const tested = stopClasses(100, undefined);
const check = (change: Partial<CornerDynamics>, classes = tested) =>
  told(stiffnessCheck(classes, dynamics(change), []));

describe("the stop's class among those that work", () => {
  it("ok, with the list, of one or of several", () => {
    expect(check({ classesThatWork: [63, 100, 160] })).toBe(
      "stiffness ok - -: Its stiffness class, 100 N/mm, is among those that work here (63 N/mm to 160 N/mm).",
    );
    expect(check({ classesThatWork: [100] })).toBe(
      "stiffness ok - -: Its stiffness class, 100 N/mm, is among those that work here (only 100 N/mm).",
    );
  });

  it("no, with the side", () => {
    expect(check({ classesThatWork: [160, 250], stiffnessSide: "soft" })).toBe(
      "stiffness no soft -: The stop is too soft: its class is 100 N/mm; those from 160 N/mm to 250 N/mm work.",
    );
    expect(check({ classesThatWork: [40], stiffnessSide: "stiff" })).toBe(
      "stiffness no stiff -: The stop is too stiff: its class is 100 N/mm; only 40 N/mm works.",
    );
    expect(check({ classesThatWork: [63, 160] })).toBe(
      "stiffness no - -: The stop's class does not work here: it is 100 N/mm; those from 63 N/mm to 160 N/mm work.",
    );
    const neither = stiffnessCheck(tested, dynamics({ classesThatWork: [63, 160] }), []);
    expect(neither).not.toHaveProperty("side");
  });

  it("no, where none works", () => {
    expect(check({ classesThatWork: [] })).toBe(
      "stiffness no - -: No stiffness class works at this height: each one compresses fully, reaches hard contact or hits too hard.",
    );
  });

  it("unsure within the ± of an estimate, in one or in several", () => {
    // 100 N/mm ± 30 %: 70 to 130 N/mm, in R5 classes 63 to 160 (ISO 3).
    const estimated = stopClasses(100, { how: "estimate", forceShare: 0.3 });
    const start =
      "stiffness unsure - stop.curve: The stop's curve is an estimate. Within its ± its class is 63 N/mm to 160 N/mm, and of these ";
    const end = " Have the stop tested, or fit one that was.";
    expect(check({ classesThatWork: [160, 250] }, estimated)).toBe(
      `${start}only 160 N/mm works here.${end}`,
    );
    expect(check({ classesThatWork: [100, 160] }, estimated)).toBe(
      `${start}100 N/mm to 160 N/mm work here.${end}`,
    );
  });
});

describe("where it cannot be said", () => {
  const start = "stiffness unsure - ";

  it("names the fault and its reading, else the gap", () => {
    const fault = { code: "any", sentence: ["Check the tyre's rate."] };
    expect(check({ faults: [{ ...fault, reading: "ride.tyreRateNPerMm" }] })).toBe(
      `${start}ride.tyreRateNPerMm: Can't tell which stiffness works. Check the tyre's rate.`,
    );
    expect(check({ side: "right", faults: [fault] })).toBe(
      `${start}right.gap: Can't tell which stiffness works. Check the tyre's rate.`,
    );
    expect(check({})).toBe(
      `${start}left.gap: Can't tell which stiffness works. Re-measure the left gap.`,
    );
  });

  it("names what is missing, before the events and after", () => {
    const words = `${start}ride.unsprungMassKg: Can't tell which stiffness works: not known is the unsprung mass. Weigh, look up or estimate it.`;
    expect(told(stiffnessNotComputed("left", ["unsprungMassKg"]))).toBe(words);
    expect(told(stiffnessCheck(tested, dynamics({}), ["unsprungMassKg"]))).toBe(words);
    expect(told(stiffnessNotComputed("left", []))).toBe(
      `${start}-: Which stiffness works here is not computed yet.`,
    );
  });
});
