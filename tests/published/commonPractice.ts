import type { DesignEvent, Fitment, Stop } from "../../src/physics/fitment.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { impactSetupOf } from "../../src/physics/impact/impactSetup.ts";
import { cornerDynamics } from "../../src/physics/stiffness/cornerDynamics.ts";
import { secantRate, stiffnessClassOf } from "../../src/physics/stop/stiffnessClass.ts";
import { type StopCurve, stopCurve } from "../../src/physics/stop/stopCurve.ts";
import { toModel } from "../../src/records/entry/units.ts";
import { type DemoName, demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { publishedSource } from "./support/published.ts";

/* Facts of the trade: common practice, no source. */

const landing: DesignEvent = { kind: "landing", heightM: 0.1 };

function firstCorner(fitment: Fitment) {
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  return corner;
}

function result(fitment: Fitment, event: DesignEvent = landing) {
  const setup = unwrapped(impactSetupOf(fitment, firstCorner(fitment), { loaded: true }));
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

const demo = (name: DemoName): Fitment => demoFitment(name);

function withoutDamping(fitment: Fitment): Fitment {
  return { ...fitment, stop: { ...fitment.stop, damping: null, testedAtSpeed: false } };
}

const strutFailures = (stiffnessClass: number) =>
  cornerDynamics(demo("strut-too-stiff"), firstCorner(demo("strut-too-stiff")))
    .failures.filter((failure) => failure.stiffnessClass === stiffnessClass)
    .map(({ kind }) => kind);

export const commonPractice = publishedSource(
  "Facts of the trade",
  "common practice",
  (published) => {
    const fact = (quantity: string, holds: () => boolean) =>
      published(quantity, "so", () => (holds() ? "so" : "not so"));

    published("class of the softest stops made, 50 lbf/in, N/mm", 10, () =>
      stiffnessClassOf(toModel(50, "lbf/in")),
    );
    published("class of the stiffest stops made, 6000 lbf/in, N/mm", 1000, () =>
      stiffnessClassOf(toModel(6000, "lbf/in")),
    );
    published(
      "a lower arm's stop sees 2.7 times the wheel's force: arm-fits",
      2.7,
      () => {
        const arm = demo("arm-fits");
        const setup = unwrapped(impactSetupOf(arm, firstCorner(arm), { loaded: true }));
        const closing = new Float64Array(3);
        setup.kinematics.evaluate(0, closing);
        return 1 / (closing[1] as number);
      },
      0.05,
    );
    fact("a stop is several times as stiff as the ride spring: arm-fits", () => {
      const arm = demo("arm-fits");
      const atWheel = secantRate(unwrapped(stopCurve(arm.stop))) / 2.7 ** 2;
      return 2.7 ** 2 * atWheel > 3 * (arm.ride?.wheelRateNPerMm ?? Number.NaN);
    });
    for (const share of [0.6, 0.8, 1]) {
      fact(`a taller stop of one class takes the same energy at less force, ${share} of δu`, () => {
        const arm = demo("arm-fits");
        const curve = unwrapped(stopCurve(arm.stop));
        const tall = unwrapped(stopCurve(taller(arm.stop, 1.4)));
        const energy = curve.energy(share * curve.usableCompressionMm);
        const less =
          tall.force(compressionFor(tall, energy)) < curve.force(compressionFor(curve, energy));
        return less && Math.abs(secantRate(tall) / secantRate(curve) - 1) < 1e-9;
      });
    }
    fact(
      "a taller stop met at the same place lowers a landing's peak force, by 5 % or more",
      () => {
        const short = result(demo("arm-fits"));
        const long = result({ ...demo("arm-fits"), stop: taller(demo("arm-fits").stop, 1.4) });
        return (
          long.peakStopForceN < 0.95 * short.peakStopForceN &&
          long.peakAccelerationG < short.peakAccelerationG
        );
      },
    );
    for (const heightM of [0.1, 0.06]) {
      fact(
        `a damped stop leaves slower and keeps a tenth of the energy, landing ${heightM} m`,
        () => {
          const slow = result(demo("damper-shaft"), { kind: "landing", heightM });
          const quick = result(withoutDamping(demo("damper-shaft")), { kind: "landing", heightM });
          return (
            slow.leaveSpeedMmPerS < quick.leaveSpeedMmPerS &&
            slow.energyOutJ < 0.9 * slow.energyInJ &&
            Math.abs(quick.energyOutJ - quick.energyInJ) < 0.005
          );
        },
      );
    }
    published("damping of a stop from a static test, N·s/mm", 0, () => {
      const untested = demo("arm-fits");
      const setup = unwrapped(impactSetupOf(untested, firstCorner(untested), { loaded: true }));
      return setup.atSpeed.dashpot?.coefficient(12, 100) ?? 0;
    });
    fact("a class too soft passes its full compression: 10 N/mm, strut-too-stiff", () =>
      strutFailures(10).includes("fullStop"),
    );
    published(
      "a class too stiff passes the acceleration cap: 1000 N/mm, strut-too-stiff",
      "acceleration acceleration",
      () => strutFailures(1000).join(" "),
    );
  },
);
