import { describe, expect, it } from "vitest";
import type { Corner, Fitment, Stop } from "../../../src/physics/fitment.ts";
import { impactSetupOf, undampedTwin, unladen } from "../../../src/physics/impact/impactSetup.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { heldAtRide, restingStop } from "../../../src/physics/road/heldAtRide.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, uprightStrut } from "../staticFitments.ts";

/** An upright strut, 100 N/mm; H 60 mm. */
const plain = uprightStrut({ gap: exact(20), corner: { cornerMassKg: exact(450) } });
const stop: Stop = { ...plain.stop, freeHeight: exact(60), curve: [[30, 3000]] };
const [gapped] = plain.corners as readonly [Corner];
const { gap: _, ...side } = gapped;
const pressedBy = (mm: number): Corner => ({ ...side, pressedHeight: exact(60 - mm) });

function fitmentOf(corner: Corner, change: Partial<Fitment> = {}): Fitment {
  return {
    ...plain,
    stop,
    corners: [corner],
    ride: { ...ride, payloadPerCornerKg: 40 },
    ...change,
  };
}

function held(fitment: Fitment): number {
  const [corner] = fitment.corners as readonly [Corner];
  const kinematics = unwrapped(kinematicsOf(fitment.layout, corner));
  return unwrapped(heldAtRide(fitment, corner, kinematics));
}

describe("what a stop held up as the vehicle was measured", () => {
  it("is nothing with a gap, just touching, or without a stop", () => {
    expect(held(fitmentOf(gapped))).toBe(0);
    expect(held(fitmentOf({ ...gapped, gap: exact(0) }))).toBe(0);
    expect(held(fitmentOf({ ...side, seatToPad: exact(50) }))).toBe(0);
  });

  it("is its force at rest where it was pressed: 8 mm at 100 N/mm, less what fades", () => {
    expect(held(fitmentOf(pressedBy(8)))).toBeCloseTo(800, 9);
    const faded = { ...stop, testedAtSpeed: true, staticShare: 0.9 };
    expect(held(fitmentOf(pressedBy(8), { stop: faded }))).toBeCloseTo(720, 9);
  });

  it("stays when another stop is asked about, on a spacer or not", () => {
    const other: Stop = { ...stop, freeHeight: exact(45), curve: [[20, 8000]] };
    const asked = fitmentOf(pressedBy(8), { stop: other, recordedStop: stop, spacerMm: 5 });
    expect(held(asked)).toBeCloseTo(800, 9);
    const [corner] = asked.corners as readonly [Corner];
    const kinematics = unwrapped(kinematicsOf(asked.layout, corner));
    const resting = unwrapped(restingStop(asked, corner, kinematics));
    // Seat and pad 52 mm apart, 45 + 5 of them filled.
    expect(resting.gapMm).toBeCloseTo(2, 9);
    expect(resting.stop.force(10)).toBeCloseTo(4000, 9);
  });
});

describe("where a pressed stop lets the vehicle rest", () => {
  const restOf = (fitment: Fitment, loaded: boolean) => {
    const [corner] = fitment.corners as readonly [Corner];
    return unwrapped(impactSetupOf(fitment, corner, { loaded }));
  };

  it("is where it was measured, and lower under a payload by what spring and stop give", () => {
    const fitment = fitmentOf(pressedBy(8));
    expect(restOf(fitment, false).restTravelMm).toBe(0);
    expect(restOf(fitment, true).restTravelMm).toBeCloseTo((40 * 9.80665) / (26 + 100), 9);
    const { restTravelMm, sprungMassKg, payloadKg } = unwrapped(unladen(restOf(fitment, true)));
    expect(restTravelMm).toBe(0);
    expect(sprungMassKg).toBe(restOf(fitment, false).sprungMassKg);
    expect(payloadKg).toBe(0);
  });

  it("is higher on its twin without loss, whose static force is the whole curve's", () => {
    const faded = { ...stop, testedAtSpeed: true, staticShare: 0.9, restLoss: 0.05 };
    const setup = restOf(fitmentOf(pressedBy(8), { stop: faded }), false);
    expect(setup.restTravelMm).toBe(0);
    // 26·z + 100·(z + 8) = 720
    expect(unwrapped(undampedTwin(setup)).restTravelMm).toBeCloseTo(-80 / 126, 9);
  });
});
