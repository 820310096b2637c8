import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Corner, Fitment } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { rideQuantities } from "../../../src/physics/readings/rideReadings.ts";
import { restingStop } from "../../../src/physics/road/heldAtRide.ts";
import { roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { SharedDraws } from "../../../src/physics/uncertainty/sharedDraws.ts";
import {
  type RoadCornerWithCurve,
  rideInDoubt,
  WantedTravelModel,
  wantedTravels,
} from "../../../src/physics/uncertainty/wantedTravel.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";

const forceShare = 0.25;
const payloadKg = 20;
const demo = demoFitment("arm-fits");
const rules = rulesOf("daily");

/** Pressed by 6 mm as measured, 60 N/mm by an estimate. */
const corner: Corner = {
  side: "left",
  pressedHeight: { values: [54], tol: 1 },
  cornerMassKg: { values: [500], tol: 0 },
  limits: [],
};
const pressed: Fitment = {
  use: "daily",
  layout: { kind: "strut", readings: { stopLean: { values: [0], tol: 0 } } },
  corners: [corner],
  stop: {
    ...demo.stop,
    duty: "impact",
    freeHeight: { values: [60], tol: 0 },
    usableCompressionMm: 30,
    usableTolMm: 0,
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

/** What the wheel sinks by with nothing in the way, mm: (m·g₀ + f·60·6)/kw. */
const sunk = (factor: number) => (payloadKg * 9.80665 + factor * 60 * 6) / 30;

const { ride } = pressed;
const kinematics = unwrapped(kinematicsOf(pressed.layout));
const onRoad: RoadCornerWithCurve = {
  kinematics,
  ...unwrapped(restingStop(pressed, corner, kinematics)),
  travelToContactMm: -6,
  progressive: false,
  cornerMassKg: 500,
  wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
  tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
  damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
  damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
  payloadKg,
};
const travel = roadTravel(onRoad, rules);
const level = (travel.freeTravelNeededMm ?? Number.NaN) - sunk(1);

describe("the ± of an estimated stop that held the vehicle up", () => {
  it("moves the free travel wanted by as much as the springs have then to carry", () => {
    expect(onRoad.heldAtRideN).toBeCloseTo(360, 9);
    expect(level).toBeGreaterThan(20);
    const model = new WantedTravelModel(onRoad, pressed.ride ?? {}, rules);
    for (const factor of [0.75, 0.9, 1, 1.25]) {
      model.set(rideQuantities.length, factor);
      expect(model.laden()).toBeCloseTo(sunk(factor) + level, 9);
      const scaled = { ...onRoad, heldAtRideN: factor * onRoad.heldAtRideN };
      expect(model.unladen()).toBeCloseTo(
        Number(roadTravel(scaled, rules).freeTravelNeededUnladenMm),
        9,
      );
    }
  });

  it("is drawn as a rectangular quantity, the same draw for the two states", () => {
    const wanted = wantedTravels(pressed, onRoad, travel, rules, new SharedDraws(20_000));
    const { laden, unladen } = wanted;
    if (typeof laden !== "function" || typeof unladen !== "function") throw new Error("not drawn");
    const values = Array.from({ length: 20_000 }, (_, draw) => laden(draw) - level);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(sunk(1 - forceShare) - 1e-9);
    expect(Math.max(...values)).toBeLessThanOrEqual(sunk(1 + forceShare) + 1e-9);
    const mean = values.reduce((sum, value) => sum + value) / values.length;
    const spread = Math.sqrt(
      values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length,
    );
    expect(mean).toBeCloseTo(sunk(1), 1);
    expect(spread).toBeCloseTo((forceShare * 60 * 6) / 30 / Math.sqrt(3), 1);
    const apart = laden(1) - unladen(1);
    for (const draw of [2, 77, 19_999]) expect(laden(draw) - unladen(draw)).toBeCloseTo(apart, 9);
  });

  it("is named among what the doubt comes from, unless nothing pressed the stop or it was tested", () => {
    const named = (fitment: Fitment) => rideInDoubt(fitment).map(({ id }) => id);
    expect(named(pressed)).toEqual(["stop.curve"]);
    const doubt = unwrapped(assessStatic(pressed)).corners[0]?.doubt.contact ?? [];
    expect(doubt.map(({ reading }) => reading)).toContain("stop.curve");
    const { estimated: _, ...known } = pressed.stop;
    expect(named({ ...pressed, stop: known })).toEqual([]);
    expect(named({ ...pressed, stop: known, recordedStop: pressed.stop })).toEqual(["stop.curve"]);
    expect(named({ ...pressed, recordedStop: known })).toEqual([]);
    const { pressedHeight: __, ...rest } = corner;
    const free = { ...rest, gap: { values: [5], tol: 1 } };
    expect(named({ ...pressed, corners: [free] })).toEqual([]);
    expect(named({ ...pressed, stop: { ...pressed.stop, duty: "carry" } })).toEqual([]);
  });
});
