import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DesignEvent } from "../../../src/physics/fitment.ts";
import { simulateImpact } from "../../../src/physics/impact/impact.ts";
import {
  type ImpactSetup,
  settled,
  undampedTwin,
} from "../../../src/physics/impact/impactSetup.ts";
import { losesEnergy } from "../../../src/physics/stop/stopAtSpeed.ts";
import type { StopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { demoCorners, loadedSetup, unwrapped } from "../demoFitments.ts";
import { lossyCases } from "./lossyCases.ts";
import { odexSolver } from "./odexSolver.ts";
import { plainQuarterCar } from "./plainQuarterCar.ts";

const cases = lossyCases.map((each) => [each.name, each] as const);

/** x with F∞(x) = force, by halving. */
function compressionAt(curve: StopCurve, force: number): number {
  let [low, high] = [0, 500];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (curve.force(middle) < force) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Where the energy of a run goes in the stop, J, by odex on the plain laws: what is held at its end less
 * what was at its start, what its parts have lost, and what a stop that would pull has not been given.
 * A branch with q = g·F∞(x) − y holds ∫(g·F∞ − y)dx from xᵢ of F∞(xᵢ) = y/g on, and loses (x − xᵢ)·q/τ.
 */
function whereItWent(setup: ImpactSetup, event: DesignEvent) {
  const car = plainQuarterCar(setup, event);
  const { dashpot, restLoss, staticShare, branches } = setup.atSpeed;
  const curve = setup.stop;
  const closing = new Float64Array(3);
  const forgottenAt = (q: number, share: number, x: number) =>
    Math.max(0, curve.force(x) - q / share);
  const held = (x: number, q: readonly number[]) =>
    branches.reduce((sum, { share }, index) => {
      const forgotten = forgottenAt(q[index] as number, share, x);
      const from = compressionAt(curve, forgotten);
      const reached = Math.max(0, x);
      const work = curve.energy(reached) - curve.energy(from) - forgotten * (reached - from);
      return sum + share * work;
    }, staticShare * curve.energy(x));
  const count = car.start.length;
  const solver = odexSolver(count + 2);
  solver.absoluteTolerance = 1e-8;
  solver.relativeTolerance = 1e-8;
  solver.maxSteps = 1e6;
  solver.maxStepSize = 1e-3;
  const at = (t: number, y: readonly number[]) => {
    const { compression, wheelTravel, closingSpeed, wholeForce } = car.observe(t, y);
    setup.kinematics.evaluate(wheelTravel, closing);
    return { x: compression, closingSpeed, wholeForce, q: y.slice(6, count) };
  };
  const { y } = solver.solve(
    (t, z) => {
      const state = z.slice(0, count);
      const { x, closingSpeed, wholeForce, q } = at(t, state);
      const inContact = x > 0;
      let lost = branches.reduce((sum, { tauS, share }, index) => {
        const force = q[index] as number;
        const from = compressionAt(curve, forgottenAt(force, share, x));
        return sum + ((Math.max(0, x) - from) * force) / tauS;
      }, 0);
      if (inContact) {
        const slides = restLoss * Math.min(1, Math.max(-1, closingSpeed / 5)) * curve.force(x);
        const c = dashpot?.coefficient(x, closingSpeed) ?? 0;
        lost += (slides + c * closingSpeed) * closingSpeed;
      }
      const notPulled = inContact ? Math.max(0, -wholeForce) * closingSpeed : 0;
      return [...car.derivative(t, state), lost / 1000, notPulled / 1000];
    },
    0,
    [...car.start, 0, 0],
    car.endS,
  );
  const start = at(0, car.start);
  const end = at(car.endS, y.slice(0, count));
  return {
    into: (y[4] as number) - (y[5] as number),
    held: (held(end.x, end.q) - held(start.x, start.q)) / 1000,
    lost: y[count] as number,
    notPulled: y[count + 1] as number,
  };
}

describe("a stop that loses energy", () => {
  it.each(cases)("keeps account of it: in = out + held + lost: %s", (_, { setup, event }) => {
    const { into, held, lost, notPulled } = whereItWent(setup, event);
    const { result } = unwrapped(simulateImpact(setup, event));
    const off = (wanted: number) =>
      Math.abs(result.energyInJ - result.energyOutJ - wanted) / result.energyInJ;
    expect(lost).toBeGreaterThan(0);
    expect(off(into)).toBeLessThan(1e-4);
    expect(off(held + lost + notPulled)).toBeLessThan(1e-3);
  });

  it.each(cases)("leaves the energy of the whole car in balance: %s", (_, { setup, event }) => {
    const { energy, result } = unwrapped(simulateImpact(setup, event));
    const { start, road, kinetic, potential, damper, stop } = energy;
    const off = start + road - kinetic - potential - damper - stop;
    expect(Math.abs(off)).toBeLessThan(
      1e-3 * (Math.abs(start) + Math.abs(road) + result.energyInJ),
    );
  });

  it.each(cases)("is settled: a tighter tolerance moves no figure by 1 in 2000: %s", (_, each) => {
    const { result } = unwrapped(simulateImpact(each.setup, each.event));
    const fine = unwrapped(
      simulateImpact(each.setup, each.event, { tolerance: 1e-9, mostSteps: 1e5 }),
    ).result;
    for (const [name, value] of Object.entries(result)) {
      const finer = Reflect.get(fine, name);
      if (typeof value !== "number" || typeof finer !== "number") expect(value).toBe(finer);
      else expect(Math.abs(value - finer), name).toBeLessThanOrEqual(5e-4 * Math.abs(finer));
    }
  });

  it("stays at rest where nothing moves it, pressed or not", () => {
    for (const { setup } of lossyCases) {
      const { result } = unwrapped(simulateImpact(setup, { kind: "landing", heightM: 0 }));
      // A rest that is off by a rounding is moved by no more than the integration's own tolerance.
      expect(result.peakAccelerationG).toBeLessThan(1e-6);
      expect(result.bodyRiseMm).toBeLessThan(1e-6);
      expect(result.tyreOffMs).toBe(0);
    }
  });
});

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyParts = fc.record({
  dashpot: fc.option(
    fc.tuple(share(0, 2), share(0, 3), share(0, 0.05)).map(([into, out, rise]) => ({
      coefficient: (x: number, velocity: number) =>
        (velocity > 0 ? into : out) + rise * Math.max(0, x),
    })),
  ),
  restLoss: fc.oneof(fc.constant(0), share(0, 0.5)),
  staticShare: share(0.4, 1),
  branches: fc.array(
    fc.record({ tauS: share(-3, 0.5).map((power) => 10 ** power), share: share(0.01, 2) }),
    { maxLength: 4 },
  ),
});
const anyCase = fc.record({
  demo: fc.constantFrom(...demoCorners),
  parts: anyParts,
  extraHeightMm: share(-20, 60),
  stopScale: share(0.2, 8),
  event: fc.oneof(
    fc.record({ kind: fc.constant("landing" as const), heightM: share(0, 0.4) }),
    fc.record({
      kind: fc.constantFrom("obstacle" as const, "hump" as const),
      heightM: share(0.01, 0.15),
      lengthM: share(0.8, 4),
      speedKmPerH: share(10, 90),
    }),
  ),
});

describe("any stop that loses energy", () => {
  it("gives back no more than it was given and held, and every figure is a number", () => {
    fc.assert(
      fc.property(anyCase, ({ demo, parts, extraHeightMm, stopScale, event }) => {
        const plain = loadedSetup(demo.fitment, demo.corner);
        const setup = settled({ ...plain, atSpeed: parts }, { extraHeightMm, stopScale });
        if (!setup.ok) return;
        const run = simulateImpact(setup.value, event);
        if (!run.ok) {
          expect(["impactTooStiff", "impactPastReach"]).toContain(run.fault.code);
          return;
        }
        const { result } = run.value;
        for (const value of Object.values(result)) {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
        }
        const { kinematics, restTravelMm, gapMm, stop } = setup.value;
        const pressed = unwrapped(kinematics.closing(restTravelMm)) - gapMm;
        const heldAtRest = (parts.staticShare * stop.energy(pressed)) / 1000;
        expect(result.energyOutJ).toBeLessThanOrEqual(
          (result.energyInJ + heldAtRest) * (1 + 1e-3) + 1e-3,
        );
        expect(result.tyreOffMs).toBeGreaterThanOrEqual(0);
        expect(result.bodyRiseMm).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 120 },
    );
  });

  it("keeps energy that its undamped twin gives back", () => {
    for (const { setup, event } of lossyCases.slice(0, 4)) {
      const twin = unwrapped(undampedTwin(setup));
      expect(losesEnergy(twin.atSpeed)).toBe(false);
      const [own, undamped] = [setup, twin].map(
        (each) => unwrapped(simulateImpact(each, event)).result,
      );
      if (own === undefined || undamped === undefined) throw new Error("no result");
      expect(own.energyOutJ / own.energyInJ).toBeLessThan(0.85);
      expect(Math.abs(undamped.energyOutJ / undamped.energyInJ - 1)).toBeLessThan(1e-3);
    }
  });
});
