import { describe, expect, it } from "vitest";
import type { Corner, Fitment, Ride, Stop } from "../../../src/physics/fitment.ts";
import {
  type ImpactState,
  impactSetupOf,
  settled,
} from "../../../src/physics/impact/impactSetup.ts";
import { QuarterCar } from "../../../src/physics/impact/quarterCar.ts";
import { roadProfile } from "../../../src/physics/impact/roadProfile.ts";
import { switches } from "../../../src/physics/impact/switches.ts";
import type { Kinematics } from "../../../src/physics/kinematics/kinematics.ts";
import { fail } from "../../../src/physics/outcome.ts";
import { staticOnly } from "../../../src/physics/stop/stopAtSpeed.ts";
import { oneMass, straight } from "../../published/support/oneMassSetup.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, ride, tyreLimit, uprightStrut } from "../staticFitments.ts";

const strut = uprightStrut({ gap: exact(45) });
const [corner] = strut.corners;
if (corner === undefined) throw new Error("no corner");
const loaded: ImpactState = { loaded: true };

describe("a corner that cannot be put through an impact", () => {
  const withStop = (change: Partial<Stop>): Fitment => ({
    ...strut,
    stop: { ...strut.stop, ...change },
  });
  it.each<[Fitment, Partial<Corner>, ImpactState, string]>([
    [strut, {}, loaded, "none"],
    [
      { ...strut, layout: { kind: "strut", readings: { stopLean: exact(89.96) } } },
      {},
      loaded,
      "stopLeansFlat (stopLean): The stop lies flat, so the wheel cannot close it. Re-measure its lean.",
    ],
    [
      withStop({ curve: [] }),
      {},
      loaded,
      "curveEmpty: The stop has no force curve. Give at least one tested point.",
    ],
    [
      withStop({ damping: [[0, -1, 0]], testedAtSpeed: true }),
      {},
      loaded,
      "dampingNegative: The stop's damping cannot be below zero.",
    ],
    [
      strut,
      { gap: exact(-1) },
      loaded,
      "gapNegative (left.gap): The left gap cannot be below zero. Type 0 if the stop already touches its pad.",
    ],
    [
      strut,
      { cornerMassKg: exact(0) },
      loaded,
      "massNotPositive (left.cornerMassKg): The left corner weight must be above zero. Weigh it again.",
    ],
    [
      strut,
      { limits: [tyreLimit(exact(-3))] },
      loaded,
      "lengthNotPositive (left.limits.0): The left clearance over the tire must be above zero. Re-measure it.",
    ],
    [
      strut,
      {},
      { loaded: true, stopScale: 0 },
      "changeNotUsable: The stiffness or height to try is not a usable number.",
    ],
    [
      strut,
      {},
      { loaded: true, extraHeightMm: Number.NaN },
      "changeNotUsable: The stiffness or height to try is not a usable number.",
    ],
    [
      // 2e7 kg on 26 N/mm alone would take the wheel 7543.6 m up.
      { ...strut, ride: { ...ride, payloadPerCornerKg: 2e7 } },
      { limits: [] },
      { loaded: true, stopScale: 1e-9 },
      "sagOutOfReach (ride.payloadPerCornerKg): Under this payload the wheel would move 7543576.9 mm up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.",
    ],
  ])("%#", (fitment, change, state, words) => {
    expect(refusal(impactSetupOf(fitment, { ...corner, ...change }, state))).toBe(words);
  });

  it("names the first ride value where none is known", () => {
    const { ride: _, ...unknown } = strut;
    expect(refusal(impactSetupOf(unknown, corner, loaded))).toBe(
      "rideUnknown (ride.unsprungMassKg): Impacts cannot be worked out without the unsprung mass. Enter it, or estimate it.",
    );
  });
});

describe("a value that a ride cannot have", () => {
  const withRide = (change: Partial<Ride>, cornerMassKg = 460) =>
    impactSetupOf(
      { ...strut, ride: { ...ride, ...change } },
      { ...corner, cornerMassKg: exact(cornerMassKg) },
      loaded,
    );

  it.each<[Partial<Ride>, string]>([
    [{ unsprungMassKg: 0 }, "unsprungMassKg): The unsprung mass"],
    [{ wheelRateNPerMm: 0 }, "wheelRateNPerMm): The wheel rate"],
    [{ tyreRateNPerMm: 0 }, "tyreRateNPerMm): The tire rate"],
    [{ tyreRateNPerMm: 1e9 }, "tyreRateNPerMm): The tire rate"],
    [{ damperBumpNsPerMm: -1e-9 }, "damperBumpNsPerMm): The damping in bump"],
    [{ damperReboundNsPerMm: -1e-9 }, "damperReboundNsPerMm): The damping in rebound"],
    [{ payloadPerCornerKg: -1e-9 }, "payloadPerCornerKg): The payload"],
  ])("is refused by its name: %o", (change, words) => {
    expect(refusal(withRide(change))).toBe(
      `rideNotUsable (ride.${words} cannot have this value. Check it.`,
    );
  });

  it.each<Partial<Ride>>([
    { damperBumpNsPerMm: 0 },
    { damperReboundNsPerMm: 0 },
    { payloadPerCornerKg: 0 },
    { tyreRateNPerMm: 9.9e8 },
  ])("is not %o", (change) => {
    expect(refusal(withRide(change))).toBe("none");
  });

  it("is a corner's weight of no more than the unsprung mass, payload and all", () => {
    const bare = { unsprungMassKg: 55, payloadPerCornerKg: 0 };
    expect(refusal(withRide(bare, 55))).toBe(
      "noSprungMass (left.cornerMassKg): The corner weight must be more than the unsprung mass. Check both.",
    );
    expect(refusal(withRide(bare, 55.1))).toBe("none");
  });
});

describe("a corner ready for impacts", () => {
  it("has the damping of a stop only where that was tested at speed", () => {
    const damping: Stop["damping"] = [
      [0, 0.1, 0.2],
      [20, 0.3, 0.5],
    ];
    const atSpeedOf = (change: Partial<Stop>) =>
      unwrapped(impactSetupOf({ ...strut, stop: { ...strut.stop, ...change } }, corner, loaded))
        .atSpeed;
    const branches = [{ tauS: 0.01, share: 0.3 }];
    const parts = { restLoss: 0.1, staticShare: 0.9, branches };
    expect(atSpeedOf({ testedAtSpeed: true, damping: null })).toEqual(staticOnly);
    expect(atSpeedOf({ testedAtSpeed: false, damping, ...parts })).toEqual(staticOnly);
    expect(atSpeedOf({ testedAtSpeed: true, damping: null, ...parts })).toEqual({
      dashpot: null,
      ...parts,
    });
    expect(atSpeedOf({ testedAtSpeed: true, damping }).dashpot?.coefficient(20, 1)).toBeCloseTo(
      0.3,
      12,
    );
  });

  it("stands without its payload where unladen, and needs to know none", () => {
    const { payloadPerCornerKg: _, ...unladen } = ride;
    const setup = unwrapped(impactSetupOf({ ...strut, ride: unladen }, corner, { loaded: false }));
    expect(setup).toMatchObject({ payloadKg: 0, sprungMassKg: 405, restTravelMm: 0 });
    // 20 kg on 26 N/mm: 20·9.80665/26 = 7.5436 mm.
    const laden = unwrapped(impactSetupOf(strut, corner, loaded));
    expect(laden).toMatchObject({ payloadKg: 20, sprungMassKg: 425, hardLimitMm: 95 });
    expect(laden.restTravelMm).toBeCloseTo(7.5436, 4);
  });

  it("has no hard limit where none was measured", () => {
    const open = unwrapped(impactSetupOf(strut, { ...corner, limits: [] }, loaded));
    expect(open.hardLimitMm).toBeNull();
  });

  it("keeps its stop where neither stiffness nor height is changed", () => {
    const setup = unwrapped(impactSetupOf(strut, corner, loaded));
    expect(unwrapped(settled(setup, {})).stop).toBe(setup.stop);
    expect(unwrapped(settled(setup, { extraHeightMm: 10 })).gapMm).toBe(35);
  });
});

describe("a stop out of the layout's reach", () => {
  const flatRoad = unwrapped(roadProfile({ kind: "landing", heightM: 0 }));
  const short: Kinematics = {
    ...straight,
    range: [-50, 50],
    wheelTravel: () => fail("unreachable", ["Out of reach."]),
  };
  const standing = (gapMm: number) => {
    const car = new QuarterCar({ ...oneMass, kinematics: short, gapMm }, flatRoad);
    car.setSwitches(0, new Float64Array(4));
    return car;
  };

  it("is never met above it", () => {
    const car = standing(80);
    expect(car.measures[switches.pressing]).toBe(Number.NEGATIVE_INFINITY);
    expect(car.on[switches.pressing]).toBe(0);
  });

  it("is always pressed below it", () => {
    const car = standing(-80);
    expect(car.measures[switches.pressing]).toBe(Number.POSITIVE_INFINITY);
    expect(car.on[switches.pressing]).toBe(1);
  });

  it("is rebounding from the start where the wheel falls", () => {
    const car = standing(80);
    car.setSwitches(0, Float64Array.of(0, 0, 0, -1));
    expect(car.on[switches.compressing]).toBe(0);
  });
});
