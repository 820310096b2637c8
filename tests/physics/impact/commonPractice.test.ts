import { describe, expect, it } from "vitest";
import type { DesignEvent, Fitment, Stop } from "../../../src/physics/fitment.ts";
import { simulateImpact } from "../../../src/physics/impact/impact.ts";
import { impactSetupOf } from "../../../src/physics/impact/impactSetup.ts";
import { cornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import { secantRate } from "../../../src/physics/stop/stiffnessClass.ts";
import { type StopCurve, stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";

/* Facts of the trade: common practice, no source. */

const landing: DesignEvent = { kind: "landing", heightM: 0.1 };

function result(fitment: Fitment, event: DesignEvent = landing) {
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  const setup = unwrapped(impactSetupOf(fitment, corner, { loaded: true }));
  return unwrapped(simulateImpact(setup, event)).result;
}

/** The same build made taller: every length and, so that the class stays, every force grows alike. */
function taller(stop: Stop, factor: number): Stop {
  return {
    ...stop,
    freeHeight: { ...stop.freeHeight, values: stop.freeHeight.values.map((v) => v * factor) },
    usableCompressionMm: stop.usableCompressionMm * factor,
    curve: stop.curve.map(([x, force]) => [x * factor, force * factor]),
  };
}

/** Compression at which a stop has taken up an energy, by bisection. */
function compressionFor(curve: StopCurve, energy: number): number {
  let low = 0;
  let high = 10 * curve.usableCompressionMm;
  for (let halving = 0; halving < 100; halving++) {
    const middle = (low + high) / 2;
    if (curve.energy(middle) < energy) low = middle;
    else high = middle;
  }
  return high;
}

describe("facts of the trade (common practice, no source)", () => {
  const arm = demoFitment("arm-fits");

  it("a taller stop of the same class takes the same energy at less force", () => {
    const curve = unwrapped(stopCurve(arm.stop));
    const tall = unwrapped(stopCurve(taller(arm.stop, 1.4)));
    expect(secantRate(tall)).toBeCloseTo(secantRate(curve), 9);
    for (const share of [0.6, 0.8, 1]) {
      const energy = curve.energy(share * curve.usableCompressionMm);
      const force = tall.force(compressionFor(tall, energy));
      expect(force).toBeLessThan(curve.force(compressionFor(curve, energy)));
    }
  });

  it("a taller stop of the same class, met at the same place, lowers the landing's peak force", () => {
    const short = result(arm);
    const long = result({ ...arm, stop: taller(arm.stop, 1.4) });
    expect(long.peakStopForceN).toBeLessThan(0.95 * short.peakStopForceN);
    expect(long.peakAccelerationG).toBeLessThan(short.peakAccelerationG);
  });

  it("a stop damped from tests at speed leaves with less speed than the same stop undamped", () => {
    const damped = demoFitment("damper-shaft");
    const undamped = { ...damped, stop: { ...damped.stop, damping: null, testedAtSpeed: false } };
    expect(damped.stop.damping).not.toBeNull();
    for (const event of [landing, { kind: "landing", heightM: 0.06 } as const]) {
      const slow = result(damped, event);
      const quick = result(undamped, event);
      expect(slow.leaveSpeedMmPerS).toBeLessThan(quick.leaveSpeedMmPerS);
      expect(slow.energyOutJ).toBeLessThan(0.9 * slow.energyInJ);
      expect(quick.energyOutJ).toBeCloseTo(quick.energyInJ, 2);
    }
  });

  it("a class too soft passes its full compression, a class too stiff passes the acceleration cap", () => {
    const strut = demoFitment("strut-too-stiff");
    for (const corner of strut.corners) {
      const { failures, classesThatWork, stiffnessSide } = cornerDynamics(strut, corner);
      const kindsOf = (stiffnessClass: number) =>
        failures.filter((f) => f.stiffnessClass === stiffnessClass).map(({ kind }) => kind);
      expect(classesThatWork).toEqual([160]);
      expect(kindsOf(10)).toContain("fullStop");
      expect(kindsOf(1000)).toEqual(["acceleration", "acceleration"]);
      expect(stiffnessSide).toBe("stiff");
    }
  });

  it("a stop at a lever ratio of 2.7 sees 2.7 times the wheel's force", () => {
    const [corner] = arm.corners;
    if (corner === undefined) throw new Error("no corner");
    const { kinematics } = unwrapped(impactSetupOf(arm, corner, { loaded: true }));
    const closing = new Float64Array(3);
    kinematics.evaluate(0, closing);
    expect(1 / (closing[1] as number)).toBeCloseTo(2.74, 2);
  });
});
