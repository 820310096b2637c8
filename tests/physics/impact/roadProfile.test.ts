import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DesignEvent } from "../../../src/physics/fitment.ts";
import { roadProfile } from "../../../src/physics/impact/roadProfile.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const bump = (heightM: number, lengthM: number, speedKmPerH: number): DesignEvent => ({
  kind: "obstacle",
  heightM,
  lengthM,
  speedKmPerH,
});
const hump = (heightM: number, lengthM: number, speedKmPerH: number): DesignEvent => ({
  kind: "hump",
  heightM,
  lengthM,
  speedKmPerH,
});
const landing = (heightM: number): DesignEvent => ({ kind: "landing", heightM });

describe("the road of an event", () => {
  it("is half a wave up and down while the bump lasts, then flat for half a second", () => {
    // 2 m at 36 km/h = 10 m/s: 0.2 s.
    const { bump: road, endS, startSpeed } = unwrapped(roadProfile(bump(0.1, 2, 36)));
    expect(road.endS).toBeCloseTo(0.2, 15);
    for (const [t, height, speed] of [
      [0, 0, 0],
      [0.05, 0.05, 0.5 * Math.PI],
      [0.1, 0.1, 0],
      [0.15, 0.05, -0.5 * Math.PI],
      [0.2, 0, 0],
    ] as const) {
      expect(road.height(t)).toBeCloseTo(height, 14);
      expect(road.speed(t)).toBeCloseTo(speed, 12);
    }
    expect(road.greatestSpeed).toBeCloseTo(0.5 * Math.PI, 14);
    expect(endS).toBeCloseTo(0.7, 15);
    expect(startSpeed).toBe(0);
  });

  it("is a circular segment over a hump, then flat for half a second", () => {
    // 3-4-5: 8 m long, 2 m high is a circle of 5 m whose middle lies 3 m below the road. 10 m/s.
    const { bump: road, endS } = unwrapped(roadProfile(hump(2, 8, 36)));
    expect(road.endS).toBeCloseTo(0.8, 15);
    for (const [t, height, speed] of [
      [0, 0, 40 / 3],
      [0.1, 1, 7.5],
      [0.4, 2, 0],
      [0.7, 1, -7.5],
      [0.8, 0, -40 / 3],
    ] as const) {
      expect(road.height(t)).toBeCloseTo(height, 12);
      expect(road.speed(t)).toBeCloseTo(speed, 12);
    }
    expect(road.greatestSpeed).toBeCloseTo(40 / 3, 12);
    expect(endS).toBeCloseTo(1.3, 15);
  });

  it("rises over any hump to its height, and as its speed says", () => {
    const anyHump = fc.record({
      heightM: fc.double({ min: 0, max: 0.4, noNaN: true }),
      lengthM: fc.double({ min: 1, max: 10, noNaN: true }),
      speedKmPerH: fc.double({ min: 5, max: 100, noNaN: true }),
      share: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    });
    fc.assert(
      fc.property(anyHump, ({ heightM, lengthM, speedKmPerH, share }) => {
        const { bump: road } = unwrapped(roadProfile(hump(heightM, lengthM, speedKmPerH)));
        expect(road.height(road.endS / 2)).toBeCloseTo(heightM, 12);
        expect(road.height(0)).toBeCloseTo(0, 12);
        const t = share * road.endS;
        const step = 1e-5 * road.endS;
        const slope = (road.height(t + step) - road.height(t - step)) / (2 * step);
        expect(Math.abs(road.speed(t) - slope)).toBeLessThan(
          1e-6 * Math.max(1, road.greatestSpeed),
        );
        expect(Math.abs(road.speed(t))).toBeLessThanOrEqual(road.greatestSpeed * (1 + 1e-12));
      }),
    );
  });

  it("is flat under a landing, which begins at the speed of the fall", () => {
    // √(2·9.80665·0.2) = 1.98057 m/s
    const { bump: road, endS, startSpeed } = unwrapped(roadProfile(landing(0.2)));
    expect(startSpeed).toBeCloseTo(-1.98057, 5);
    expect([road.height(0.1), road.speed(0.1), road.greatestSpeed, road.endS]).toEqual([
      0, 0, 0, 0,
    ]);
    expect(endS).toBe(0.6);
  });

  it.each([landing(0), landing(1e6), bump(0, 2, 40), bump(0.1, 1e6, 3.6)])("may be %o", (event) => {
    expect(refusal(roadProfile(event))).toBe("none");
  });

  it.each([-1e-9, Number.NaN, Number.POSITIVE_INFINITY, 1.0001e6])(
    "is refused for a landing from %d m",
    (heightM) => {
      expect(refusal(roadProfile(landing(heightM)))).toBe(
        "eventNotUsable: The height of the landing must be 0 or more. Correct it.",
      );
    },
  );

  it.each([hump(0.5, 1, 40), hump(2, 1, 40)])(
    "is refused for %o, steeper than a half circle",
    (event) => {
      expect(refusal(roadProfile(event))).toBe(
        "eventNotUsable: The speed bump must be less than half as high as it is long. Correct its height or length.",
      );
    },
  );

  it.each([
    hump(-0.1, 2, 40),
    hump(0.1, 2, 0),
    bump(-0.1, 2, 40),
    bump(Number.NaN, 2, 40),
    bump(0.1, 0, 40),
    bump(0.1, 2, 0),
    bump(0.1, 2, -40),
    bump(2e6, 2, 40),
    bump(0.1, 2e6, 40),
    bump(0.1, 2, 4e6),
    // 10⁷ s on the bump
    bump(0.1, 1e6, 0.36),
  ])("is refused for %o", (event) => {
    expect(refusal(roadProfile(event))).toBe(
      "eventNotUsable: The bump needs a height of 0 or more, and a length and a speed above 0. Correct them.",
    );
  });
});
