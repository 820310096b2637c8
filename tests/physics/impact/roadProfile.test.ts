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
const landing = (heightM: number): DesignEvent => ({ kind: "landing", heightM });

describe("the road of an event", () => {
  it("is half a wave up and down while the bump lasts, then flat for half a second", () => {
    // 2 m at 36 km/h = 10 m/s: 0.2 s.
    const { amplitude, angularSpeed, bumpEndS, endS, startSpeed } = unwrapped(
      roadProfile(bump(0.1, 2, 36)),
    );
    expect(amplitude).toBe(0.05);
    expect(bumpEndS).toBeCloseTo(0.2, 15);
    expect(angularSpeed).toBeCloseTo(10 * Math.PI, 12);
    expect(endS).toBeCloseTo(0.7, 15);
    expect(startSpeed).toBe(0);
  });

  it("is flat under a landing, which begins at the speed of the fall", () => {
    // √(2·9.80665·0.2) = 1.98057 m/s
    const { startSpeed, ...flat } = unwrapped(roadProfile(landing(0.2)));
    expect(startSpeed).toBeCloseTo(-1.98057, 5);
    expect(flat).toEqual({ amplitude: 0, angularSpeed: 0, bumpEndS: 0, endS: 0.6 });
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

  it.each([
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
