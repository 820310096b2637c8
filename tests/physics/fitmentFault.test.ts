import { describe, expect, it } from "vitest";
import type { Fitment, Ride, UseRules } from "../../src/physics/fitment.ts";
import { fitmentFault } from "../../src/physics/fitmentFault.ts";
import { rulesOf } from "../../src/physics/road/useRules.ts";
import { refusal } from "./refusal.ts";
import { exact, ride, uprightStrut } from "./staticFitments.ts";

const sound = uprightStrut({});
const daily = rulesOf("daily");

function told(fitment: Fitment, rules: UseRules = daily): string {
  const fault = fitmentFault(fitment, rules);
  return fault === null ? "none" : refusal({ ok: false, fault });
}

const corner = (side: string) => ({ side, gap: exact(40), limits: [] }) as Fitment["corners"][0];
const withCorners = (...sides: string[]) => told({ ...sound, corners: sides.map(corner) });

describe("the corners of a fitment", () => {
  it("are one or two of different sides", () => {
    expect(withCorners("left")).toBe("none");
    expect(withCorners("right")).toBe("none");
    expect(withCorners("right", "left")).toBe("none");
  });

  it.each([[[]], [["left", "left"]], [["left", "right", "left"]], [["left", "right", "middle"]]])(
    "are refused otherwise: %j",
    (sides) => {
      expect(withCorners(...sides)).toBe(
        "cornersWrong: A check needs one or two corners, of different sides. Measure the left, the right or both.",
      );
    },
  );
});

/* A usable number is 0, or 1e-6 to 1e6: beyond these a slip of the hand is surer than a vehicle. */
const usable = [0, 1e-6, 1, 1e6];
const unusable = [-1, -1e-6, 0.99e-6, 1.01e6, Number.NaN, Number.POSITIVE_INFINITY];

describe("ride values", () => {
  const names = {
    unsprungMassKg: "nsprung mass",
    wheelRateNPerMm: "heel rate",
    tyreRateNPerMm: "ire rate",
    damperBumpNsPerMm: "amping in bump",
    damperReboundNsPerMm: "amping in rebound",
    payloadPerCornerKg: "ayload",
  };
  const within = (name: string, value: number): Fitment => ({
    ...sound,
    ride: { ...ride, [name]: value },
  });
  const withTolerance = (name: string, value: number): Fitment => ({
    ...sound,
    ride: { ...ride, tolerances: { [name]: value } as NonNullable<Ride["tolerances"]> },
  });

  it.each(Object.entries(names))("%s", (name, words) => {
    for (const value of usable) {
      expect(told(within(name, value))).toBe("none");
      expect(told(withTolerance(name, value))).toBe("none");
    }
    for (const value of unusable) {
      expect(told(within(name, value))).toMatch(
        new RegExp(
          `^rideOutOfRange \\(ride\\.${name}\\): The .${words} is not a usable number\\. Type it again\\.$`,
        ),
      );
      expect(told(withTolerance(name, value))).toMatch(
        new RegExp(
          `^rideOutOfRange \\(ride\\.${name}\\): The ± of the .${words} is not a usable number\\. Type it again\\.$`,
        ),
      );
    }
  });

  it("are not asked for here", () => {
    const { ride: _, ...unknown } = sound;
    expect(told(unknown)).toBe("none");
    expect(told({ ...sound, ride: {} })).toBe("none");
  });

  it("are looked at after the corners and before the demands of the use", () => {
    const bad = within("wheelRateNPerMm", -1);
    expect(told({ ...bad, corners: [] })).toMatch(/^cornersWrong/);
    expect(told(bad, { ...daily, speedKmPerH: 0 })).toMatch(/^rideOutOfRange/);
  });
});

describe("demands of the use", () => {
  it.each<[keyof UseRules, string, boolean]>([
    ["speedKmPerH", "The speed on the road", true],
    ["allowedContactsPerKm", "The number of contacts allowed per km", true],
    ["accelerationCapG", "The acceleration cap", false],
    ["reserveMm", "The reserve wanted", false],
    ["balanceMm", "The difference allowed left to right", false],
  ])("%s", (name, words, aboveZero) => {
    const set = (value: number) => told(sound, { ...daily, [name]: value });
    const refused = `rulesOutOfRange: ${words} is not a usable number. Set it again, or go back to the default.`;
    for (const value of usable) {
      expect(set(value)).toBe(value === 0 && aboveZero ? refused : "none");
    }
    for (const value of unusable) expect(set(value)).toBe(refused);
  });

  it("roads are those of ISO 8608, A to E", () => {
    for (const roadClass of ["A", "B", "C", "D", "E"] as const)
      expect(told(sound, { ...daily, roadClass })).toBe("none");
    for (const roadClass of ["F", "", "toString", "c"] as unknown as UseRules["roadClass"][])
      expect(told(sound, { ...daily, roadClass })).toBe(
        "rulesOutOfRange: The road class must be one of A to E.",
      );
  });
});
