import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Fitment, RideQuantity } from "../../../src/physics/fitment.ts";
import { earlyContactCheck } from "../../../src/physics/verdict/earlyContact.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";
import { type EvidenceChange, evidenceOf, toldOf } from "./evidenceOf.ts";

/* An upright strut is met after its gap of 45 mm of wheel travel. */
const fitment = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] });
const needs = { freeTravelNeededMm: 50, freeTravelNeededUnladenMm: 38 };
const contact = [
  { reading: "left.gap" as const, share: 0.8 },
  { reading: "ride.wheelRateNPerMm" as const, share: 0.2 },
];
const doubt = { reserve: [{ reading: "left.limits.0" as const, share: 1 }], contact };

function told(laden: number | null, unladen: number | null, change: EvidenceChange = {}): string {
  const evidence = { road: needs, doubt, contactBeyond: { laden, unladen }, ...change };
  return toldOf(earlyContactCheck(evidenceOf(fitment, evidence)));
}

describe("early contact, decided by P(z_c ≥ z_need) laden and unladen", () => {
  it("ok, with what it is: a screening figure", () => {
    expect(told(0.95, 0.99)).toBe(
      "earlyContact ok P 0.95 -: Loaded, this use needs 50.0 mm of free travel. You have 45.0 mm.",
    );
  });

  it("care", () => {
    expect(told(0.2, 0.95)).toBe(
      "earlyContact care P 0.2 left.gap: Loaded, the stop touches too often: this use needs 50.0 mm of free travel and has only 45.0 mm. As measured, the 38.0 mm needed are there.",
    );
  });

  const no =
    "left.gap: The stop touches too often even as measured: this use needs 38.0 mm of free travel and has only 45.0 mm.";
  it("no", () => {
    expect(told(0, 0.05)).toBe(`earlyContact no P 0 ${no}`);
  });

  it("no, before the payload is known, where it is met too often without any", () => {
    const road = { ...needs, freeTravelNeededMm: null };
    expect(told(null, 0.05)).toBe(`earlyContact no ${no}`);
    expect(told(0.5, 0.05, { road })).toBe(`earlyContact no ${no}`);
  });

  it("unsure, and what to measure again", () => {
    expect(told(0.1, 0.5)).toBe(
      "earlyContact unsure P 0.1 left.gap: Can't tell whether the stop touches too often. As measured this use needs 38.0 mm of free travel and has about 45.0 mm. Re-measure the left gap, more closely if you can: 80 % of the margin of error comes from it.",
    );
  });

  it("unsure, where more than 5 % of the draws are outside the layout's reach", () => {
    const outside =
      "left.gap: Within their ± the readings also allow a suspension that can't move this far (6 % of the cases). So the answer can't tell. Re-measure the left gap, more closely if you can.";
    expect(told(0.95, 0.95, { draws: { outsideShare: 0.05 } })).toMatch(/^earlyContact ok/);
    expect(told(0.95, 0.95, { draws: { outsideShare: 0.06 } })).toBe(
      `earlyContact unsure P 0.95 ${outside}`,
    );
    expect(told(null, 0.95, { draws: { outsideShare: 0.06 } })).toBe(
      `earlyContact unsure ${outside}`,
    );
    const evidence = evidenceOf(fitment, { draws: { outsideShare: 0.06 }, road: needs });
    expect(earlyContactCheck(evidence)).not.toHaveProperty("probability");
  });

  const again =
    "left.gap: Can't tell how often the stop touches. Re-measure the left gap, more closely if you can: 80 % of the margin of error comes from it.";
  it.each<[string, number | null, number | null, EvidenceChange]>([
    ["no unladen probability", 0.99, null, {}],
    ["no unladen need", 0.99, 0.99, { road: { ...needs, freeTravelNeededUnladenMm: null } }],
    ["no laden probability", null, 0.99, {}],
    ["no laden need", 0.99, 0.99, { road: { ...needs, freeTravelNeededMm: null } }],
  ])("unsure: %s", (_, laden, unladen, change) => {
    expect(told(laden, unladen, change)).toBe(`earlyContact unsure ${again}`);
  });

  it.each<[RideQuantity | "cornerMassKg", string, string]>([
    ["cornerMassKg", "left.cornerMassKg", "the left corner weight"],
    ["wheelRateNPerMm", "ride.wheelRateNPerMm", "the wheel rate"],
    ["tyreRateNPerMm", "ride.tyreRateNPerMm", "the tire rate"],
    ["damperBumpNsPerMm", "ride.damperBumpNsPerMm", "the damping in bump"],
    ["damperReboundNsPerMm", "ride.damperReboundNsPerMm", "the damping in rebound"],
    ["payloadPerCornerKg", "ride.payloadPerCornerKg", "the payload"],
  ])("unsure for want of %s", (name, reading, words) => {
    expect(told(null, null, { missing: ["unsprungMassKg", name] })).toBe(
      `earlyContact unsure ${reading}: Can't tell how often the stop touches: not known is ${words}. Weigh, look up or estimate it.`,
    );
  });

  it("does not want the unsprung mass, which only the events need", () => {
    expect(told(null, null, { missing: ["unsprungMassKg"] })).toBe(`earlyContact unsure ${again}`);
  });

  it("speaks of what is missing before a fault", () => {
    const fault = { code: "any", sentence: ["Check the readings."] };
    expect(
      told(null, null, { missing: ["tyreRateNPerMm"], road: { ...needs, faults: [fault] } }),
    ).toMatch(/not known is the tire rate/);
    expect(told(null, null, { road: { ...needs, faults: [fault] } })).toBe(
      "earlyContact unsure left.gap: Can't tell how often the stop touches. Check the readings.",
    );
  });
});

describe("a stop made to carry, δu = 30 mm", () => {
  const carrying: Fitment = { ...fitment, stop: { ...fitment.stop, duty: "carry" } };
  const carried = (change: EvidenceChange) =>
    toldOf(earlyContactCheck(evidenceOf(carrying, change)));
  const words = (pressed: string, share: string) =>
    `This stop is made to support load. Loaded, it is pressed by ${pressed}, ${share} of its usable compression`;

  it("to a quarter ok, to a half care, else no", () => {
    expect(carried({ loadedCompressionMm: 7.5 })).toBe(
      `earlyContact ok -: ${words("7.5 mm", "25 %")}.`,
    );
    expect(carried({ loadedCompressionMm: 15 })).toBe(
      `earlyContact care ride.payloadPerCornerKg: ${words("15.0 mm", "50 %")}. It is more than the quarter that leaves room for bumps.`,
    );
    expect(carried({ loadedCompressionMm: 18 })).toBe(
      `earlyContact no ride.payloadPerCornerKg: ${words("18.0 mm", "60 %")}. It is more than half, so too little is left for bumps.`,
    );
  });

  it("has no probability", () => {
    const check = earlyContactCheck(
      evidenceOf(carrying, {
        loadedCompressionMm: 3,
        contactBeyond: { laden: 0.1, unladen: 0.1 },
        road: needs,
      }),
    );
    expect(check.state).toBe("ok");
    expect(check).not.toHaveProperty("probability");
  });

  it("wants the wheel rate and the payload, and nothing else", () => {
    const missing = ["cornerMassKg", "tyreRateNPerMm", "payloadPerCornerKg"] as const;
    expect(carried({ missing })).toBe(
      "earlyContact unsure ride.payloadPerCornerKg: Can't tell how often the stop touches: not known is the payload. Weigh, look up or estimate it.",
    );
    expect(carried({ missing: ["wheelRateNPerMm", "payloadPerCornerKg"] })).toBe(
      "earlyContact unsure ride.wheelRateNPerMm: Can't tell how often the stop touches: not known are the wheel rate and the payload. Weigh, look up or estimate them.",
    );
  });

  it("is unsure where the ± of an estimated curve holds two answers", () => {
    expect(carried({ loadedCompressionMm: 7, estimatedCompressionMm: [6, 7.5] })).toMatch(
      /^earlyContact ok/,
    );
    expect(carried({ loadedCompressionMm: 7, estimatedCompressionMm: [6, 8] })).toBe(
      "earlyContact unsure stop.curve: This stop is made to support load, and its curve is an estimate. Within its ± it is pressed by 6.0 mm to 8.0 mm under load, which may be too much. Have the stop tested, or fit one that was.",
    );
    expect(carried({ loadedCompressionMm: 20, estimatedCompressionMm: [16, 24] })).toMatch(
      /^earlyContact no/,
    );
  });
});

describe("free travel that is enough at the mean readings only", () => {
  it("is too close to call, and never told as too little", () => {
    const { corners } = unwrapped(
      assessStatic(demoFitment("strut-too-stiff"), { samples: 10_000 }),
    );
    for (const { checks, freeTravelNeededMm, wheelTravelToContactMm } of corners) {
      const early = checks.find(({ id }) => id === "earlyContact");
      expect(wheelTravelToContactMm).toBeGreaterThan(freeTravelNeededMm ?? Number.NaN);
      expect(early?.state).toBe("care");
      expect(early && inModelUnits(early.sentence)).toMatch(/^Loaded, it is too close to call /);
    }
  });

  it("is told as none where the stop is pressed at rest", () => {
    const { corners } = unwrapped(
      assessStatic(demoFitment("pressed-foam-on-a-rod"), { samples: 10_000 }),
    );
    const told = corners.flatMap(({ checks }) =>
      checks
        .filter(({ id }) => id === "earlyContact")
        .map(({ sentence }) => inModelUnits(sentence)),
    );
    expect(told.length).toBe(2);
    for (const sentence of told) expect(sentence).toMatch(/of free travel and has none\./);
  });
});
