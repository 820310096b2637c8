import { describe, expect, it } from "vitest";
import { type RestCorner, restPosition } from "../../../src/physics/road/restPosition.ts";
import { levelAboveRest, type RoadStanding } from "../../../src/physics/road/roadTravel.ts";
import { defaultRules } from "../../../src/physics/road/useRules.ts";
import { standardGravity } from "../../../src/physics/standardGravity.ts";
import { linearStop, straight } from "../../published/support/oneMassSetup.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const standing: RoadStanding = {
  totalMassKg: 560,
  tyreRateNPerMm: 240,
  damperBumpNsPerMm: 1.8,
  damperReboundNsPerMm: 3.6,
  progressive: false,
};
const rules = defaultRules.daily;

const check = (words: string) => `The ${words} must be above 0. Check that value.`;

describe("the level that is passed as often as allowed", () => {
  // σ = 9.345532 mm and ν0 = √(240000/560)/2π = 3.294823/s at 60 km/h, class C; N = 2 a km.
  it("is σ·√(2·ln(ν0·1000/(V·N))) on an even road", () => {
    const evenRoad = { ...rules, roadKurtosis: 3 } as const;
    const sigma = 1000 * Math.sqrt((Math.PI ** 2 * 0.01 * 256e-6 * (60 / 3.6) * 560) / 2700);
    const perKm = (Math.sqrt(240_000 / 560) / (2 * Math.PI) / (60 / 3.6)) * 1000;
    expect(unwrapped(levelAboveRest(standing, evenRoad))).toBeCloseTo(
      sigma * Math.sqrt(2 * Math.log(perKm / 2)),
      9,
    );
    expect(unwrapped(levelAboveRest({ ...standing, progressive: true }, evenRoad))).toBeCloseTo(
      sigma * Math.sqrt(2 * Math.log(perKm / 20)),
      9,
    );
  });

  it("is farther up on a road of rough and smooth pieces", () => {
    // (1 + u)·exp(−u) = 2/197.689, u = 6.624979 by SciPy's lambertw; √3·σ of the same.
    const level = unwrapped(levelAboveRest(standing, rules));
    expect(level / 9.345532).toBeCloseTo(6.624979 / Math.sqrt(3), 4);
  });

  it.each<[Partial<RoadStanding>, Partial<typeof rules>, string]>([
    [{}, {}, "none"],
    [{}, { speedKmPerH: 0 }, `speedNotPositive: ${check("speed on the road")}`],
    [
      {},
      { speedKmPerH: Number.POSITIVE_INFINITY },
      `speedNotPositive: ${check("speed on the road")}`,
    ],
    [
      {},
      { allowedContactsPerKm: 0 },
      `allowedContactsNotPositive: ${check("number of contacts allowed per km")}`,
    ],
    [
      { totalMassKg: 0 },
      {},
      `cornerMassNotPositive (cornerMassKg): ${check("mass on this wheel")}`,
    ],
    [
      { totalMassKg: Number.NaN },
      {},
      `cornerMassNotPositive (cornerMassKg): ${check("mass on this wheel")}`,
    ],
    [
      { damperBumpNsPerMm: 0, damperReboundNsPerMm: 0 },
      {},
      `dampingNotPositive (ride.damperBumpNsPerMm): ${check("damping at the wheel")}`,
    ],
    [
      { tyreRateNPerMm: -1 },
      {},
      `tyreRateNotPositive (ride.tyreRateNPerMm): ${check("tire's rate")}`,
    ],
  ])("names what cannot be: %o %o", (change, changed, words) => {
    expect(refusal(levelAboveRest({ ...standing, ...change }, { ...rules, ...changed }))).toBe(
      words,
    );
  });
});

describe("the rest position of an upright stop, by hand", () => {
  const corner: RestCorner = {
    kinematics: straight,
    stop: linearStop(100),
    gapMm: 20,
    heldAtRideN: 0,
    wheelRateNPerMm: 25,
  };

  it("is load over rate while the stop is free, and exactly so", () => {
    expect(unwrapped(restPosition(corner, 50))).toBe((50 * standardGravity) / 25);
    expect(unwrapped(restPosition(corner, 0))).toBe(0);
  });

  it("shares the load with the stop beyond its gap: 25·z + 100·(z − 20) = m·g", () => {
    expect(unwrapped(restPosition(corner, 200))).toBeCloseTo(
      (200 * standardGravity + 2000) / 125,
      9,
    );
  });

  it("stands higher on a stop that is taller than its gap: 25·z + 100·(z + 10) = 0", () => {
    expect(unwrapped(restPosition({ ...corner, gapMm: -10 }, 0))).toBeCloseTo(-8, 9);
  });

  it("stands as it was measured on the stop that was pressed then: F_rec = 100·10", () => {
    const pressed = { ...corner, gapMm: -10, heldAtRideN: 1000 };
    expect(unwrapped(restPosition(pressed, 0))).toBe(0);
    expect(unwrapped(restPosition(pressed, 50))).toBeCloseTo((50 * standardGravity) / 125, 9);
  });

  it("settles onto a lower stop than held it up: 25·z + 100·(z − 5) = 1000", () => {
    const lower = { ...corner, gapMm: 5, heldAtRideN: 1000 };
    expect(unwrapped(restPosition(lower, 0))).toBeCloseTo(1500 / 125, 9);
    // Nothing under it: 25·z = 1000.
    expect(unwrapped(restPosition({ ...lower, gapMm: 60 }, 0))).toBeCloseTo(40, 12);
  });

  it.each<[Partial<RestCorner>, number, string]>([
    [
      {},
      Number.NaN,
      "payloadNotANumber (ride.payloadPerCornerKg): The payload is not a number. Enter the load this corner carries in use.",
    ],
    [
      { wheelRateNPerMm: 0 },
      10,
      "wheelRateNotPositive (ride.wheelRateNPerMm): The spring's rate at the wheel must be above 0. Check the wheel rate.",
    ],
    [
      { kinematics: { ...straight, range: [-50, 50] }, gapMm: 60 },
      200,
      "sagOutOfReach (ride.payloadPerCornerKg): Under this payload the wheel would move 78.5 mm up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.",
    ],
    [
      { kinematics: { ...straight, range: [-50, 50] } },
      -200,
      "sagOutOfReach (ride.payloadPerCornerKg): Under this payload the wheel would move -78.5 mm up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.",
    ],
    [
      { kinematics: { ...straight, range: [-5, 50] }, gapMm: -40 },
      0,
      "sagOutOfReach (ride.payloadPerCornerKg): Under this payload the wheel would move 0.0 mm up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.",
    ],
  ])("names what cannot be: %o %d", (change, payload, words) => {
    expect(refusal(restPosition({ ...corner, ...change }, payload))).toBe(words);
  });

  it("reaches a range's end where the stop holds the wheel there", () => {
    const short: RestCorner = { ...corner, kinematics: { ...straight, range: [-50, 50] } };
    expect(unwrapped(restPosition(short, 250))).toBeCloseTo(
      (250 * standardGravity + 2000) / 125,
      9,
    );
  });
});
