import { describe, expect, it } from "vitest";
import { crossingShare, upcrossingsPerKm } from "../../../src/physics/road/levelCrossings.ts";
import { type RoadCorner, roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { defaultRules } from "../../../src/physics/road/useRules.ts";
import { linearStop, straight } from "../../published/support/oneMassSetup.ts";

const rules = defaultRules.daily;

const corner: RoadCorner = {
  kinematics: straight,
  stop: linearStop(100),
  gapMm: 40,
  heldAtRideN: 0,
  travelToContactMm: 40,
  progressive: false,
  cornerMassKg: 560,
  wheelRateNPerMm: 28,
  tyreRateNPerMm: 240,
  damperBumpNsPerMm: 1.8,
  damperReboundNsPerMm: 3.6,
  payloadKg: 60,
};

describe("what is not known of a corner leaves out what needs it, and is no fault", () => {
  it.each(["cornerMassKg", "damperBumpNsPerMm", "damperReboundNsPerMm"] as const)("%s", (name) => {
    const travel = roadTravel({ ...corner, [name]: null }, rules);
    expect(travel.faults).toEqual([]);
    expect(travel.roadTravelSigmaMm).toBeNull();
    expect(travel.loadedTravelSigmaMm).toBeNull();
    expect(travel.contactsPerKm).toBeNull();
    expect(travel.loadedContactsPerKm).toBeNull();
    expect(travel.freeTravelNeededMm).toBeNull();
    expect(travel.mostExtraHeightMm).toBeNull();
    expect(travel.loadedSagMm).toBeCloseTo((60 * 9.80665) / 28, 9);
    expect(travel.zeroUpcrossingsPerS === null).toBe(name === "cornerMassKg");
  });
});

describe("what cannot be is told once, however many figures need it", () => {
  const codes = (change: Partial<RoadCorner>, changed: Partial<typeof rules> = {}) =>
    roadTravel({ ...corner, ...change }, { ...rules, ...changed }).faults.map(
      ({ code, reading }) => `${code} ${reading ?? "-"}`,
    );

  it("one value at fault", () => {
    expect(codes({})).toEqual([]);
    expect(codes({ cornerMassKg: -1000 })).toEqual(["cornerMassNotPositive cornerMassKg"]);
    expect(codes({ tyreRateNPerMm: -1 })).toEqual(["tyreRateNotPositive ride.tyreRateNPerMm"]);
    expect(codes({}, { speedKmPerH: 0 })).toEqual(["speedNotPositive -"]);
    expect(codes({}, { allowedContactsPerKm: 0 })).toEqual(["allowedContactsNotPositive -"]);
  });

  it("two values at fault, both", () => {
    expect(codes({ tyreRateNPerMm: -1, damperBumpNsPerMm: -9 })).toEqual([
      "dampingNotPositive ride.damperBumpNsPerMm",
      "tyreRateNotPositive ride.tyreRateNPerMm",
    ]);
  });

  it("a number of contacts that cannot be allowed leaves what does not need it", () => {
    const travel = roadTravel(corner, { ...rules, allowedContactsPerKm: 0 });
    expect(travel.contactsPerKm).toBeGreaterThan(0);
    expect(travel.freeTravelNeededMm).toBeNull();
    expect(travel.freeTravelNeededUnladenMm).toBeNull();
  });
});

describe("a stop", () => {
  it("that just touches lets the unladen vehicle stand as measured, whatever its spring", () => {
    const travel = roadTravel({ ...corner, gapMm: 0, wheelRateNPerMm: null }, rules);
    expect(travel.freeTravelNeededUnladenMm).toBeGreaterThan(0);
    expect(travel.faults).toEqual([]);
  });

  it("taller than its gap changes nothing of the free travel needed, the rest with nothing in the way", () => {
    const pressed = { ...corner, gapMm: -10, travelToContactMm: -10 };
    const free = roadTravel(corner, rules);
    const { freeTravelNeededUnladenMm, freeTravelNeededMm } = roadTravel(pressed, rules);
    expect(freeTravelNeededUnladenMm).toBe(free.freeTravelNeededUnladenMm);
    expect(freeTravelNeededMm).toBe(free.freeTravelNeededMm);
    expect(
      roadTravel({ ...pressed, wheelRateNPerMm: null }, rules).freeTravelNeededUnladenMm,
    ).toBeNull();
  });

  it("that held the vehicle up leaves the springs to carry that as well: 1000 N on 28 N/mm", () => {
    const free = roadTravel(corner, rules);
    const held = roadTravel({ ...corner, heldAtRideN: 1000 }, rules);
    for (const name of ["freeTravelNeededUnladenMm", "freeTravelNeededMm"] as const) {
      expect((held[name] as number) - (free[name] as number)).toBeCloseTo(1000 / 28, 9);
    }
    // 28·z + 100·(z − 40) = 1000 + 60 kg·g, or without the stop where it is not reached.
    const load = 60 * 9.80665;
    expect(held.loadedSagMm).toBeCloseTo((load + 1000 + 4000) / 128, 9);
    const mean = upcrossingsPerKm(0, {
      sigma: held.roadTravelSigmaMm as number,
      zeroUpcrossings: held.zeroUpcrossingsPerS as number,
      speed: 60 / 3.6,
      kurtosis: 5,
    });
    const share = crossingShare((40 - 1000 / 28) / (held.roadTravelSigmaMm as number), 5);
    expect(held.contactsPerKm).toBeCloseTo(mean * share, 9);
  });

  it("is met by the laden wheel of a heavier mass, with the greater travel", () => {
    const travel = roadTravel(corner, rules);
    expect(
      (travel.loadedTravelSigmaMm as number) / (travel.roadTravelSigmaMm as number),
    ).toBeCloseTo(Math.sqrt(620 / 560), 12);
  });
});
