import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Stop } from "../../../src/physics/fitment.ts";
import {
  curveAtRest,
  losesEnergy,
  type StopAtSpeed,
  staticOnly,
  stopAtSpeed,
} from "../../../src/physics/stop/stopAtSpeed.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { StopForce } from "../../../src/physics/stop/stopForce.ts";
import { linearStop } from "../../published/support/oneMassSetup.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const tested: Stop = {
  name: "Test stop",
  duty: "impact",
  freeHeight: { values: [60], tol: 1 },
  usableCompressionMm: 30,
  curve: [[30, 3000]],
  damping: null,
  testedAtSpeed: true,
};
const dashpotOf = (compressing: number, rebounding: number): StopAtSpeed["dashpot"] => ({
  coefficient: (_, velocity) => (velocity > 0 ? compressing : rebounding),
});
const noStates = new Float64Array(0);

/** The force at a compression and speed of a stop on 100 N/mm without branches, N. */
function forceOf(parts: Partial<StopAtSpeed>, x: number, speed: number): number {
  const stop = new StopForce(linearStop(100), { ...staticOnly, ...parts });
  const share = stop.restLossShare(speed);
  return stop.whole(x, stop.curveForce(x), speed, speed, share, noStates, 0);
}

describe("the force of a stop, by hand", () => {
  it("is its curve where nothing else is known", () => {
    for (const speed of [-2000, 0, 2000]) expect(forceOf({}, 12, speed)).toBe(1200);
  });

  it("remains as its share at rest", () => {
    expect(forceOf({ staticShare: 0.9 }, 12, 0)).toBeCloseTo(1080, 9);
    const stop = new StopForce(linearStop(100), { ...staticOnly, staticShare: 0.9 });
    expect(stop.atRest(12)).toBeCloseTo(1080, 9);
    expect(stop.atRest(-3)).toBe(0);
    expect(stop.energyAtRest(12)).toBeCloseTo((0.9 * 100 * 12 ** 2) / 2, 9);
    expect(curveAtRest(linearStop(100), { ...staticOnly, staticShare: 0.9 }).force(12)).toBeCloseTo(
      1080,
      9,
    );
  });

  it("is more by its rest loss while pressed and less while let go, in full from 5 mm/s on", () => {
    const lossy = { restLoss: 0.1 };
    expect(forceOf(lossy, 12, 5)).toBeCloseTo(1320, 9);
    expect(forceOf(lossy, 12, 900)).toBeCloseTo(1320, 9);
    expect(forceOf(lossy, 12, 2)).toBeCloseTo(1200 + 48, 9);
    expect(forceOf(lossy, 12, 0)).toBeCloseTo(1200, 9);
    expect(forceOf(lossy, 12, -2.5)).toBeCloseTo(1200 - 60, 9);
    expect(forceOf(lossy, 12, -700)).toBeCloseTo(1080, 9);
  });

  it("has the dashpot's force by the sign of its speed", () => {
    const damped = { dashpot: dashpotOf(0.4, 0.6) };
    expect(forceOf(damped, 12, 1000)).toBeCloseTo(1600, 9);
    expect(forceOf(damped, 12, -1000)).toBeCloseTo(600, 9);
  });

  it("goes straight on below first touch for a hair, where no stop pushes", () => {
    const stop = new StopForce(linearStop(100), staticOnly);
    expect(stop.curveForce(-0.001)).toBeCloseTo(-0.1, 12);
    expect(stop.curveForce(2)).toBe(200);
  });
});

describe("the branches of a stop", () => {
  const branches = [
    { tauS: 0.01, share: 0.5 },
    { tauS: 0.2, share: 0.3 },
  ];
  const stop = new StopForce(linearStop(100), { ...staticOnly, branches });
  const at = (x: number, states: Float64Array) =>
    stop.whole(x, stop.curveForce(x), 0, 1, 0, states, 0);

  it("stiffen a stop pressed at once by all of their shares", () => {
    expect(at(10, new Float64Array(2))).toBeCloseTo(1000 * (1 + 0.5 + 0.3), 9);
  });

  it("leave a stop that has long been held its static force", () => {
    const states = new Float64Array(2);
    stop.relaxed(1000, states, 0);
    expect(at(10, states)).toBeCloseTo(1000, 9);
    const rates = new Float64Array(2);
    stop.relaxation(1000, states, 0, rates, 0);
    expect([...rates]).toEqual([0, 0]);
  });

  it("fade while the stop is apart as exp(−t/τ) does", () => {
    const states = Float64Array.of(400, 200);
    stop.fade(0.02, states, 0);
    expect(states[0]).toBeCloseTo(400 * Math.exp(-2), 9);
    expect(states[1]).toBeCloseTo(200 * Math.exp(-0.1), 9);
  });

  it("follow q̇ = g·F∞′(x)·ẋ − q/τ: their state is what they have forgotten of g·F∞", () => {
    const curve = unwrapped(
      stopCurve({
        ...tested,
        curve: [
          [8, 300],
          [20, 1800],
          [30, 6000],
        ],
      }),
    );
    const force = new StopForce(curve, { ...staticOnly, branches });
    const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(double(0.1, 28), double(-3000, 3000), double(0, 3000), (x, speed, forgotten) => {
        const step = 1e-7;
        const rates = new Float64Array(2);
        const states = Float64Array.of(forgotten, forgotten);
        force.relaxation(curve.force(x), states, 0, rates, 0);
        branches.forEach(({ tauS, share }, index) => {
          const q = share * curve.force(x) - forgotten;
          const later =
            share * curve.force(x + speed * step) - (forgotten + (rates[index] as number) * step);
          const wanted = share * curve.slope(x) * speed - q / tauS;
          expect(Math.abs((later - q) / step - wanted)).toBeLessThan(
            1e-2 * (1000 + Math.abs(wanted)),
          );
        });
      }),
    );
  });
});

describe("what tests at speed show of a stop", () => {
  it("is nothing of a stop not tested so, whatever stands in it", () => {
    const stop = { ...tested, testedAtSpeed: false, restLoss: 0.1, staticShare: 0.8 };
    expect(unwrapped(stopAtSpeed(stop))).toBe(staticOnly);
  });

  it("is absent where the test shows none", () => {
    expect(unwrapped(stopAtSpeed(tested))).toEqual(staticOnly);
    expect(unwrapped(stopAtSpeed({ ...tested, damping: [] })).dashpot).toBeNull();
    const still = [{ tauS: 0.1, share: 0 }];
    expect(unwrapped(stopAtSpeed({ ...tested, branches: still })).branches).toEqual([]);
  });

  it("loses energy by any of its parts, and not by what remains at rest", () => {
    expect(losesEnergy(staticOnly)).toBe(false);
    expect(losesEnergy({ ...staticOnly, staticShare: 0.9 })).toBe(false);
    expect(losesEnergy({ ...staticOnly, restLoss: 0.01 })).toBe(true);
    expect(losesEnergy({ ...staticOnly, dashpot: dashpotOf(0, 0) })).toBe(true);
    expect(losesEnergy({ ...staticOnly, branches: [{ tauS: 1, share: 0.1 }] })).toBe(true);
  });

  const loss =
    "restLossNotUsable: The stop's rest loss is a share of its force, from 0 to 1. Read the test of the stop again.";
  const share =
    "staticShareNotUsable: The share of the stop's force that remains at rest must be above 0 and at most 1. Read the test of the stop again.";
  const branch =
    "branchNotUsable: A fading part of the stop's force needs a time above 0 and a share of 0 or more. Read the test of the stop again.";
  it.each<[Partial<Stop>, string]>([
    [{ restLoss: 0, staticShare: 1, branches: [] }, "none"],
    [{ restLoss: 1, staticShare: 0.01, branches: [{ tauS: 1e-4, share: 3 }] }, "none"],
    [{ restLoss: -0.01 }, loss],
    [{ restLoss: 1.01 }, loss],
    [{ restLoss: Number.NaN }, loss],
    [{ staticShare: 0 }, share],
    [{ staticShare: 1.001 }, share],
    [{ staticShare: Number.NaN }, share],
    [{ branches: [{ tauS: 0, share: 0.1 }] }, branch],
    [{ branches: [{ tauS: Number.POSITIVE_INFINITY, share: 0.1 }] }, branch],
    [{ branches: [{ tauS: 0.1, share: -0.1 }] }, branch],
    [{ branches: [{ tauS: 0.1, share: Number.NaN }] }, branch],
  ])("may be, or is named: %o", (change, words) => {
    expect(refusal(stopAtSpeed({ ...tested, ...change }))).toBe(words);
  });
});
