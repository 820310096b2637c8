import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { RoadClass } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { restingStop } from "../../../src/physics/road/heldAtRide.ts";
import { restPosition } from "../../../src/physics/road/restPosition.ts";
import { type RoadCorner, roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { defaultRules, rulesOf } from "../../../src/physics/road/useRules.ts";
import { isProgressive } from "../../../src/physics/stop/stiffnessClass.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import { type DemoCorner, demoCorners, unwrapped } from "../demoFitments.ts";

function roadCorner({ fitment, corner }: DemoCorner): RoadCorner {
  const kinematics = unwrapped(kinematicsOf(fitment.layout, corner));
  const resting = unwrapped(restingStop(fitment, corner, kinematics));
  const { ride } = fitment;
  return {
    kinematics,
    ...resting,
    travelToContactMm: unwrapped(kinematics.wheelTravel(resting.gapMm)),
    progressive: isProgressive(resting.stop),
    cornerMassKg: corner.cornerMassKg === undefined ? null : meanOf(corner.cornerMassKg),
    wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
    tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
    damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
    damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
    payloadKg: ride?.payloadPerCornerKg ?? null,
  };
}

const first = demoCorners[0] as DemoCorner;
const daily = rulesOf("daily");

describe("how often the wheel reaches the stop", () => {
  it("lets a progressive stop be met ten times as often (common practice)", () => {
    const corner = roadCorner(first);
    const tenfold = { ...daily, allowedContactsPerKm: 10 * daily.allowedContactsPerKm };
    expect(roadTravel({ ...corner, progressive: true }, daily).freeTravelNeededMm).toBeCloseTo(
      roadTravel({ ...corner, progressive: false }, tenfold).freeTravelNeededMm as number,
      9,
    );
  });

  it("asks for the level that is passed half as often as the mean where more is allowed", () => {
    const travel = roadTravel(roadCorner(first), { ...daily, allowedContactsPerKm: 1e6 });
    const half = Math.sqrt(2 * Math.LN2);
    expect(travel.freeTravelNeededUnladenMm).toBeCloseTo(
      half * (travel.roadTravelSigmaMm as number),
      9,
    );
    expect(travel.freeTravelNeededMm).toBeCloseTo(
      (travel.loadedSagMm as number) + half * (travel.loadedTravelSigmaMm as number),
      9,
    );
  });

  it("meets the stop the more often, and asks for the more travel, the rougher the road", () => {
    const corner = roadCorner(first);
    const classes: readonly RoadClass[] = ["A", "B", "C", "D", "E"];
    const travels = classes.map((roadClass) => roadTravel(corner, { ...daily, roadClass }));
    for (const name of ["contactsPerKm", "loadedContactsPerKm", "freeTravelNeededMm"] as const) {
      const figures = travels.map((travel) => travel[name] as number);
      expect(figures).toEqual([...figures].sort((a, b) => a - b));
      expect(new Set(figures).size).toBe(classes.length);
    }
  });

  it("leaves null what an unknown value is needed for, and says the rest", () => {
    const corner = roadCorner(first);
    const noTyre = roadTravel({ ...corner, tyreRateNPerMm: null }, daily);
    expect(noTyre.roadTravelSigmaMm).toBeGreaterThan(0);
    expect(noTyre.loadedSagMm).toBeGreaterThan(0);
    expect(noTyre.contactsPerKm).toBeNull();
    expect(noTyre.mostExtraHeightMm).toBeNull();
    const noPayload = roadTravel({ ...corner, payloadKg: null }, daily);
    expect(noPayload.contactsPerKm).toBeGreaterThan(0);
    expect(noPayload.loadedSagMm).toBeNull();
    expect(noPayload.freeTravelNeededMm).toBeNull();
    const noSpring = roadTravel({ ...corner, wheelRateNPerMm: null }, daily);
    expect(noSpring.contactsPerKm).toBeGreaterThan(0);
    expect(noSpring.loadedContactsPerKm).toBeNull();
    expect([noTyre, noPayload, noSpring].flatMap(({ faults }) => faults)).toEqual([]);
  });

  it.each([
    ["cornerMassKg", "cornerMassNotPositive"],
    ["wheelRateNPerMm", "wheelRateNotPositive"],
    ["tyreRateNPerMm", "tyreRateNotPositive"],
    ["payloadKg", "payloadNotANumber"],
  ] as const)("names a %s that cannot be", (name, code) => {
    const value = name === "payloadKg" ? Number.NaN : -1000;
    const travel = roadTravel({ ...roadCorner(first), [name]: value }, daily);
    expect(travel.faults.map((fault) => fault.code)).toContain(code);
    expect(travel.freeTravelNeededMm).toBeNull();
  });

  it("names a payload that takes the arm past its reach", () => {
    const travel = roadTravel({ ...roadCorner(first), gapMm: 1e4, payloadKg: 2000 }, daily);
    expect(travel.faults.map((fault) => fault.code)).toEqual(["sagOutOfReach"]);
    expect(travel.loadedSagMm).toBeNull();
  });
});

describe("the rest position", () => {
  it("balances spring, stop and payload, for any gap and payload", () => {
    const corner = roadCorner(first);
    const closing = new Float64Array(3);
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 600, noNaN: true }),
        (gapMm, payload) => {
          const moved = { ...corner, gapMm, wheelRateNPerMm: 28 };
          const z = unwrapped(restPosition(moved, payload));
          corner.kinematics.evaluate(z, closing);
          const [s = 0, slope = 0] = closing;
          const carried = 28 * z + corner.stop.force(s - gapMm) * slope;
          expect(Math.abs(carried - payload * 9.80665)).toBeLessThan(1e-6 * (1 + payload));
        },
      ),
    );
  });
});

describe("the rules of a use", () => {
  it("are common practice, without a source", () => {
    expect(defaultRules).toMatchObject({
      daily: { roadClass: "C", speedKmPerH: 60, allowedContactsPerKm: 2, accelerationCapG: 2.5 },
      towing: { roadClass: "C", speedKmPerH: 80, allowedContactsPerKm: 2, accelerationCapG: 2.5 },
      offroad: { roadClass: "D", speedKmPerH: 40, allowedContactsPerKm: 50, accelerationCapG: 4 },
    });
    for (const use of ["daily", "towing"] as const) {
      expect(rulesOf(use).events).toEqual([
        { kind: "obstacle", heightM: 0.1, lengthM: 2, speedKmPerH: 40 },
        { kind: "landing", heightM: 0.1 },
      ]);
    }
    expect(rulesOf("offroad").events).toEqual([
      { kind: "obstacle", heightM: 0.15, lengthM: 2.5, speedKmPerH: 40 },
      { kind: "landing", heightM: 0.25 },
    ]);
  });

  it("take a check's own changes and keep the rest", () => {
    expect(rulesOf("towing", { accelerationCapG: 3 })).toEqual({
      ...defaultRules.towing,
      accelerationCapG: 3,
    });
  });
});
