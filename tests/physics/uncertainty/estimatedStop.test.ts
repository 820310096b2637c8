import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Fitment } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import {
  type RoadCornerWithCurve,
  rideInDoubt,
  rideQuantities,
  WantedTravelModel,
} from "../../../src/physics/uncertainty/wantedTravel.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";

const forceShare = 0.25;
const gapMm = 12;
const gapTol = 7;
const payloadKg = 100;
const demo = demoFitment("arm-fits");
const rules = rulesOf("daily", { allowedContactsPerKm: 1e6 });

/** One side, nothing in doubt but the gap and the stop's forces; the payload presses the stop. */
const pressed: Fitment = {
  use: "daily",
  layout: {
    kind: "strut",
    readings: { stopLean: { values: [0], tol: 0 } },
  },
  corners: [
    {
      side: "left",
      gap: { values: [gapMm], tol: gapTol },
      cornerMassKg: { values: [500], tol: 0 },
      limits: [],
    },
  ],
  stop: {
    ...demo.stop,
    duty: "impact",
    freeHeight: { values: [60], tol: 0 },
    usableCompressionMm: 30,
    // Straight, so that the sag has a closed form.
    curve: [
      [10, 600],
      [40, 2400],
    ],
    damping: null,
    testedAtSpeed: false,
    estimated: { how: "from 60 Shore A", forceShare },
  },
  ride: {
    unsprungMassKg: 50,
    wheelRateNPerMm: 30,
    tyreRateNPerMm: 220,
    damperBumpNsPerMm: 2,
    damperReboundNsPerMm: 3,
    payloadPerCornerKg: payloadKg,
  },
  rules,
};

/** kw·z + f·60·(z − g) = m·g₀ (a strut upright: R = 1); standard gravity 9.80665 m/s² of NIST SP 811. */
const sagWith = (factor: number) =>
  (payloadKg * 9.80665 + factor * 60 * gapMm) / (30 + factor * 60);

function cornerOf({ layout, stop, ride }: Fitment): RoadCornerWithCurve {
  const kinematics = unwrapped(kinematicsOf(layout));
  return {
    kinematics,
    stop: unwrapped(stopCurve(stop)),
    gapMm,
    travelToContactMm: gapMm,
    progressive: false,
    cornerMassKg: 500,
    wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
    tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
    damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
    damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
    payloadKg: ride?.payloadPerCornerKg ?? null,
  };
}

describe("the ± of an estimated stop under payload", () => {
  it("moves the sag as the force balance says, and as the road figures of the scaled curve do", () => {
    const corner = cornerOf(pressed);
    const model = new WantedTravelModel(corner, pressed.ride ?? {}, rules);
    for (const factor of [0.75, 0.9, 1, 1.25]) {
      model.set(rideQuantities.length, factor);
      const scaled = { ...corner, stop: corner.stop.scaled(factor) };
      // With a million contacts allowed nothing but the sag is wanted.
      expect(model.laden()).toBeCloseTo(sagWith(factor), 9);
      expect(model.laden()).toBeCloseTo(Number(roadTravel(scaled, rules).loadedSagMm), 9);
    }
  });

  it("enters the probability of early contact: against the double integral by the midpoint rule", () => {
    const probability = (fitment: Fitment) =>
      unwrapped(assessStatic(fitment)).corners[0]?.earlyContactProbability ?? Number.NaN;
    const { estimated: _, ...known } = pressed.stop;
    const uniform = (steps: number, half: number) =>
      Array.from({ length: steps }, (_, index) => half * ((2 * index + 1) / steps - 1));
    const share = (factors: readonly number[]) => {
      let kept = 0;
      for (const factor of factors) {
        const sag = sagWith(factor);
        for (const off of uniform(2000, gapTol)) if (gapMm + off >= sag) kept += 1;
      }
      return kept / factors.length / 2000;
    };
    const wide = share(uniform(400, forceShare).map((off) => 1 + off));
    const sharp = share([1]);
    // Four standard errors of 40 000 draws about a probability of 0.03: 4·√(0.03·0.97/40 000).
    const error = 0.0035;
    expect(wide - sharp).toBeGreaterThan(2 * error);
    expect(Math.abs(probability(pressed) - wide)).toBeLessThan(error);
    expect(Math.abs(probability({ ...pressed, stop: known }) - sharp)).toBeLessThan(error);
  });

  it("is named among what the doubt comes from, unless nothing presses the stop or it was tested", () => {
    const named = (fitment: Fitment) => rideInDoubt(fitment).map(({ id }) => id);
    expect(named(pressed)).toEqual(["stop.curve"]);
    const doubt = unwrapped(assessStatic(pressed)).corners[0]?.doubt.contact ?? [];
    expect(doubt.map(({ reading }) => reading)).toContain("stop.curve");
    const { estimated: _, ...known } = pressed.stop;
    expect(named({ ...pressed, stop: known })).toEqual([]);
    expect(named({ ...pressed, ride: { ...pressed.ride, payloadPerCornerKg: 0 } })).toEqual([]);
    expect(named({ ...pressed, stop: { ...pressed.stop, duty: "carry" } })).toEqual([]);
  });
});
