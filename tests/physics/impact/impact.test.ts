import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DesignEvent, EventResult, Fitment } from "../../../src/physics/fitment.ts";
import {
  type ImpactRun,
  impactDefaults,
  simulateImpact,
} from "../../../src/physics/impact/impact.ts";
import {
  type ImpactSetup,
  impactSetupOf,
  settled,
} from "../../../src/physics/impact/impactSetup.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { losesEnergy } from "../../../src/physics/stop/stopAtSpeed.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { tolerances } from "../../vectors/vectors.ts";
import { type DemoCorner, demoCorners, loadedSetup, unwrapped } from "../demoFitments.ts";
import { hardCases } from "./hardCases.ts";
import { plainQuarterCar } from "./plainQuarterCar.ts";

const events = demoCorners.flatMap((demo) =>
  rulesOf(demo.fitment.use).events.map((event, index) => ({
    name: `${demo.name}, ${event.kind}`,
    demo,
    event,
    wanted: demo.wanted.events[index] as unknown as EventResult,
    setup: loadedSetup(demo.fitment, demo.corner),
  })),
);
const cases = events.map((each) => [each.name, each] as const);

const figures = [
  ["peakWheelTravelMm", tolerances.event],
  ["peakCompressionMm", tolerances.event],
  ["peakStopForceN", tolerances.event],
  ["peakAccelerationG", tolerances.event],
  ["energyInJ", tolerances.energy],
  ["energyOutJ", tolerances.energy],
  ["leaveSpeedMmPerS", tolerances.leaveSpeed],
] as const;

function expectFigures(got: EventResult, wanted: EventResult, allowed: (one: number) => number) {
  for (const [name, tolerance] of figures) {
    const difference = Math.abs(got[name] - wanted[name]);
    expect(difference, name).toBeLessThanOrEqual(allowed(tolerance) * Math.abs(wanted[name]));
  }
  expect([got.fullStop, got.hardContact]).toEqual([wanted.fullStop, wanted.hardContact]);
}

/** Below this, J, energies are not told apart. */
const leastEnergy = 0.1;

/** What does not add up, as a share of the energy that came in and went through the stop. */
function imbalance({ energy, result }: ImpactRun): number {
  const { start, road, kinetic, potential, damper, stop } = energy;
  const handled = Math.abs(start) + Math.abs(road) + result.energyInJ;
  return (start + road - kinetic - potential - damper - stop) / Math.max(leastEnergy, handled);
}

function run(setup: ImpactSetup, event: DesignEvent, tolerance?: number): ImpactRun {
  return unwrapped(simulateImpact(setup, event, tolerance === undefined ? {} : { tolerance }));
}

describe("impacts of the demo corners", () => {
  it.each(cases)("agree with the vectors: %s", (_, { setup, event, wanted }) => {
    expectFigures(run(setup, event).result, wanted, (tolerance) => tolerance);
  });

  it.each(cases)("keep their energy to 1 part in 1000: %s", (_, { setup, event }) => {
    expect(Math.abs(imbalance(run(setup, event)))).toBeLessThan(1e-3);
    expect(Math.abs(imbalance(run(setup, event, 1e-9)))).toBeLessThan(1e-7);
  });

  it.each(cases)(
    "are settled, no figure moves by 5 parts in 10 000 with a tighter tolerance: %s",
    (_, each) => {
      const { result } = run(each.setup, each.event);
      const finer = run(each.setup, each.event, 1e-9);
      expectFigures(result, finer.result, () => 5e-4);
    },
  );
});

describe("the peaks of an event", () => {
  it.each(cases)("are found inside of long steps too: %s", (_, { setup, event }) => {
    const finest = run(setup, event, 1e-10).result;
    for (const [tolerance, apart] of [
      [1e-4, 1e-3],
      [1e-5, 5e-5],
    ] as const) {
      const { result } = run(setup, event, tolerance);
      for (const name of ["peakStopForceN", "peakAccelerationG", "peakWheelTravelMm"] as const) {
        const share = Math.abs(result[name] - finest[name]) / Math.max(finest[name], 1e-9);
        expect(share, `${name} at ${tolerance}`).toBeLessThan(apart);
      }
    }
  });
});

const arm = demoCorners[0] as DemoCorner;
const carrying = demoCorners.find(({ name }) => name.startsWith("damper")) as DemoCorner;
const armSetup = loadedSetup(arm.fitment, arm.corner);
const landing: DesignEvent = { kind: "landing", heightM: 0.1 };

describe("any impact", () => {
  const anySetup = fc
    .record({
      demo: fc.constantFrom(...demoCorners),
      extraHeightMm: fc.double({ min: -40, max: 60, noNaN: true }),
      stopScale: fc.double({ min: 0.02, max: 50, noNaN: true }),
      payload: fc.double({ min: 0, max: 400, noNaN: true }),
      damperScale: fc.double({ min: 0.1, max: 5, noNaN: true }),
    })
    .map(({ demo, extraHeightMm, stopScale, payload, damperScale }) => {
      const ride = demo.fitment.ride ?? {};
      const fitment: Fitment = {
        ...demo.fitment,
        ride: {
          ...ride,
          payloadPerCornerKg: payload,
          damperBumpNsPerMm: damperScale * (ride.damperBumpNsPerMm ?? 0),
          damperReboundNsPerMm: damperScale * (ride.damperReboundNsPerMm ?? 0),
        },
      };
      return impactSetupOf(fitment, demo.corner, { loaded: true, extraHeightMm, stopScale });
    });
  const anyEvent: fc.Arbitrary<DesignEvent> = fc.oneof(
    fc.record({
      kind: fc.constant("landing" as const),
      heightM: fc.double({ min: 0, max: 0.6, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant("obstacle" as const),
      heightM: fc.double({ min: 0, max: 0.2, noNaN: true }),
      lengthM: fc.double({ min: 0.6, max: 4, noNaN: true }),
      speedKmPerH: fc.double({ min: 10, max: 130, noNaN: true }),
    }),
  );

  it("ends where the stop fails, and fails in no other event than a whole run does", () => {
    const seen = { failed: 0, passed: 0 };
    fc.assert(
      fc.property(anySetup, anyEvent, fc.double({ min: 1, max: 6 }), (setup, event, cap) => {
        if (!setup.ok) return;
        const whole = simulateImpact(setup.value, event);
        const ended = simulateImpact(setup.value, event, { failsAboveG: cap });
        const failed = ({ result }: ImpactRun) =>
          result.peakAccelerationG > cap || result.fullStop || result.hardContact;
        if (!whole.ok) {
          if (ended.ok) expect(failed(ended.value)).toBe(true);
          return;
        }
        const value = unwrapped(ended);
        expect(failed(value)).toBe(failed(whole.value));
        expect(value.steps).toBeLessThanOrEqual(whole.value.steps);
        if (!failed(value)) expect(value).toEqual(whole.value);
        seen[failed(value) ? "failed" : "passed"] += 1;
      }),
      { numRuns: 150 },
    );
    expect(Math.min(seen.failed, seen.passed)).toBeGreaterThan(10);
  });

  it("keeps its energy within 0.1 %, is finite, and settles, or ends in a named fault", () => {
    fc.assert(
      fc.property(anySetup, anyEvent, (setup, event) => {
        if (!setup.ok) {
          expect(setup.fault.code).toBe("sagOutOfReach");
          return;
        }
        const outcome = simulateImpact(setup.value, event);
        if (!outcome.ok) {
          expect(outcome.fault.code).toBe("impactPastReach");
          return;
        }
        const { result, steps } = outcome.value;
        expect(steps).toBeLessThanOrEqual(6000);
        for (const [name] of figures) expect(Number.isFinite(result[name]), name).toBe(true);
        expect(Math.abs(imbalance(outcome.value))).toBeLessThan(1e-3);
        const finer = run(setup.value, event, 1e-9).result;
        const travel = Math.abs(result.peakWheelTravelMm - finer.peakWheelTravelMm);
        expect(travel).toBeLessThan(5e-4 * (1 + Math.abs(finer.peakWheelTravelMm)));
        // Who rests on the stop and is not moved meets its loss with either sign, as rounding has it.
        if (event.heightM < 1e-6) return;
        expect(Math.abs(result.peakStopForceN - finer.peakStopForceN)).toBeLessThan(
          1e-3 * (100 + finer.peakStopForceN),
        );
      }),
      { numRuns: 150 },
    );
  });

  it("that lets an undamped stop go again gives back what went in", () => {
    for (const each of events.filter(({ setup }) => !losesEnergy(setup.atSpeed))) {
      const { result } = run(each.setup, { kind: "landing", heightM: 0.08 });
      expect(Math.abs(result.energyOutJ - result.energyInJ)).toBeLessThan(
        1e-4 * result.energyInJ + 1e-9,
      );
    }
  });

  it("without a drop stays at rest", () => {
    const { result } = run(armSetup, { kind: "landing", heightM: 0 });
    expect(result.peakWheelTravelMm).toBeCloseTo(armSetup.restTravelMm, 9);
    expect(result).toMatchObject({ energyInJ: 0, energyOutJ: 0, leaveSpeedMmPerS: 0 });
  });

  it("stays at rest on a stop that carries part of the payload", () => {
    const pressed = unwrapped(settled(armSetup, { extraHeightMm: 30 }));
    const { result } = run(pressed, { kind: "landing", heightM: 0 });
    expect(pressed.restTravelMm).toBeLessThan(armSetup.restTravelMm);
    expect(result.peakCompressionMm).toBeGreaterThan(0);
    expect(result.peakAccelerationG).toBeLessThan(1e-9);
  });
});

describe("the steps of a run", () => {
  const stepsOf = (setup: ImpactSetup, event: DesignEvent) => run(setup, event).steps;

  it("of all design events of the demo corners are few", () => {
    // As counted in November 2026; more are a loss of speed that no figure would show.
    const counts = events.map(({ setup, event }) => stepsOf(setup, event));
    expect(counts.reduce((sum, count) => sum + count)).toBeLessThanOrEqual(2200);
    expect(Math.max(...counts)).toBeLessThanOrEqual(170);
  });

  it("are the same for events of any size that leave the car linear, from 1 mm/s to 1 m/s", () => {
    // No stop, no limit, damping alike both ways, tyre on the ground: twice the event is twice all.
    const linear: ImpactSetup = {
      ...armSetup,
      gapMm: 500,
      hardLimitMm: null,
      damperReboundNsPerMm: armSetup.damperBumpNsPerMm,
    };
    const fallen = (speed: number): DesignEvent => ({
      kind: "landing",
      heightM: speed ** 2 / (2 * 9.80665),
    });
    const usual = stepsOf(linear, fallen(0.25));
    for (const speed of [0.002, 0.02, 0.06, 0.5])
      expect(stepsOf(linear, fallen(speed))).toBe(usual);
    expect(stepsOf(linear, fallen(0.0002))).toBeLessThan(usual);
    expect(stepsOf(linear, fallen(2))).toBeGreaterThan(usual);
    const bump = (heightM: number): DesignEvent => ({
      kind: "obstacle",
      heightM,
      lengthM: 2,
      speedKmPerH: 20,
    });
    const overBump = stepsOf(linear, bump(0.01));
    for (const heightM of [0.001, 0.004, 0.02]) {
      expect(stepsOf(linear, bump(heightM))).toBe(overBump);
    }
    expect(stepsOf(linear, bump(0.00002))).toBeLessThan(overBump);
  });

  it("may be just as many as allowed", () => {
    const { steps } = run(armSetup, landing);
    expect(simulateImpact(armSetup, landing, { mostSteps: steps }).ok).toBe(true);
    expect(simulateImpact(armSetup, landing, { mostSteps: steps - 1 }).ok).toBe(false);
  });
});

describe("a run", () => {
  it("finds nothing left of the runs before, whether they ended or were given up", () => {
    const first = unwrapped(simulateImpact(armSetup, landing));
    simulateImpact(armSetup, { kind: "landing", heightM: 0.02 });
    expect(simulateImpact(armSetup, landing, { mostSteps: 20 }).ok).toBe(false);
    expect(simulateImpact(armSetup, landing)).toEqual({ ok: true, value: first });
  });
});

describe("laws that change close together", () => {
  const cases = hardCases.map((each) => [each.name, each] as const);

  it.each(cases)("change in their order and place: %s", (_, { setup, event }) => {
    const usual = run(setup, event).result;
    const fine = run(setup, event, 1e-9).result;
    for (const [name] of figures) {
      const difference = Math.abs(usual[name] - fine[name]);
      // What leaves such a stop again is next to nothing.
      const nothing = name === "energyOutJ" ? 1e-5 * fine.energyInJ : 0;
      expect(difference, name).toBeLessThan(1e-3 * Math.abs(fine[name]) + nothing);
    }
  });

  it.each(cases.filter(([name]) => name.includes("slower than it is left")))(
    "are not passed over by long steps: %s",
    (_, { setup, event }) => {
      const coarse = run(setup, event, 1e-3).result;
      const fine = run(setup, event, 1e-9).result;
      for (const [name] of figures) {
        const difference = Math.abs(coarse[name] - fine[name]);
        const nothing = name === "energyOutJ" ? 1e-5 * fine.energyInJ : 0;
        expect(difference, name).toBeLessThan(0.02 * Math.abs(fine[name]) + nothing);
      }
    },
  );
});

describe("a run's trace", () => {
  it("runs from start to end and holds the peaks", () => {
    for (const { setup, event } of events) {
      const { result, trace } = unwrapped(simulateImpact(setup, event, { traceStepS: 2e-4 }));
      if (trace === null) throw new Error("no trace");
      const car = plainQuarterCar(setup, event);
      expect(trace.timeS[0]).toBe(0);
      expect(trace.timeS.at(-1)).toBeCloseTo(car.endS, 12);
      const greatest = (values: Float64Array) => values.reduce((a, b) => Math.max(a, b), 0);
      const pairs = [
        [greatest(trace.wheelTravelMm), result.peakWheelTravelMm],
        [greatest(trace.compressionMm), result.peakCompressionMm],
        [greatest(trace.stopForceN), result.peakStopForceN],
        [greatest(trace.accelerationG), result.peakAccelerationG],
      ] as const;
      for (const [seen, peak] of pairs) {
        expect(seen).toBeLessThanOrEqual(peak * (1 + 1e-5));
        expect(seen).toBeGreaterThan(peak * 0.98);
      }
      const rise = greatest(trace.bodyMm.map((height) => height + setup.restTravelMm));
      expect(rise).toBeGreaterThanOrEqual(result.bodyRiseMm * 0.98 - 0.05);
      expect(rise).toBeLessThanOrEqual(result.bodyRiseMm * (1 + 1e-5) + 1e-6);
      expect(trace.bodyMm[0]).toBeCloseTo(-setup.restTravelMm, 9);
      const bump = event.kind === "landing" ? 0 : 1000 * event.heightM;
      expect(greatest(trace.roadMm)).toBeGreaterThanOrEqual(bump * 0.99);
      expect(greatest(trace.roadMm)).toBeLessThanOrEqual(bump);
      expect(trace.roadMm.at(-1)).toBe(0);
    }
  });

  it("has as many points as asked for, within its bounds, the first at rest", () => {
    const times = (traceStepS: number) => {
      const { trace } = unwrapped(simulateImpact(armSetup, landing, { traceStepS }));
      if (trace === null) throw new Error("no trace");
      expect(trace.wheelTravelMm[0]).toBeCloseTo(armSetup.restTravelMm, 9);
      return [...trace.timeS];
    };
    expect(times(0.15)).toEqual([0, 0.15, 0.3, 0.45, 0.6].map((t) => expect.closeTo(t, 12)));
    expect(times(5)).toEqual([0, 0.6]);
    expect(times(1e-9)).toHaveLength(20_000);
  });

  it("is the same curve whatever steps it was worked out in", () => {
    for (const { setup, event } of events) {
      const [usual, finer] = [impactDefaults.tolerance, 1e-9].map(
        (tolerance) =>
          unwrapped(simulateImpact(setup, event, { traceStepS: 0.001, tolerance, mostSteps: 1e5 }))
            .trace,
      );
      if (!usual || !finer) throw new Error("no trace");
      const most = finer.wheelTravelMm.reduce((a, b) => Math.max(a, b), 0);
      for (const [point, travel] of finer.wheelTravelMm.entries()) {
        expect(Math.abs((usual.wheelTravelMm[point] as number) - travel)).toBeLessThan(1e-3 * most);
      }
    }
  });

  it("is not made unless asked for, and changes no figure", () => {
    const plain = run(armSetup, landing);
    expect(plain.trace).toBeNull();
    const traced = unwrapped(simulateImpact(armSetup, landing, { traceStepS: 0.001 }));
    expect(traced.result).toEqual(plain.result);
  });
});

describe("what cannot be worked out", () => {
  const codeOf = (setup: ImpactSetup, event: DesignEvent, mostSteps?: number) => {
    const outcome = simulateImpact(setup, event, mostSteps === undefined ? {} : { mostSteps });
    return outcome.ok ? "ok" : outcome.fault.code;
  };

  it.each<[string, Partial<ImpactSetup>]>([
    ["a spring as stiff as a wall", { wheelRateNPerMm: 1e12 }],
    ["a damper as stiff as a wall", { damperBumpNsPerMm: 1e9, damperReboundNsPerMm: 1e9 }],
    ["a tyre as stiff as a wall", { tyreRateNPerMm: 1e14 }],
    ["a wheel of no mass", { unsprungMassKg: 1e-12 }],
    ["a stop as stiff as a wall", { stop: armSetup.stop.scaled(1e12) }],
  ])("ends within its steps: %s", (_, change) => {
    const code = codeOf({ ...armSetup, ...change }, landing);
    expect(["ok", "impactTooStiff"]).toContain(code);
  });

  it("names a stiff one", () => {
    expect(codeOf({ ...armSetup, damperBumpNsPerMm: 1e9 }, landing)).toBe("impactTooStiff");
    expect(codeOf(armSetup, landing, 20)).toBe("impactTooStiff");
    expect(
      codeOf(armSetup, { kind: "obstacle", heightM: 0.1, lengthM: 2, speedKmPerH: 1e-3 }),
    ).toBe("impactTooStiff");
  });

  it("says what to check, each in its own words", () => {
    const sentence = (setup: ImpactSetup, event: DesignEvent) => {
      const outcome = simulateImpact(setup, event);
      return outcome.ok ? "" : inModelUnits(outcome.fault.sentence);
    };
    expect(sentence({ ...armSetup, damperBumpNsPerMm: 1e9 }, landing)).toBe(
      "The impact could not be worked out: a rate or a damping is far stiffer than the masses allow. Check the stop's curve, the rates and the damping.",
    );
    expect(sentence({ ...armSetup, sprungMassKg: Number.NaN }, landing)).toBe(
      "The impact could not be worked out from these values. Check the masses, rates and damping.",
    );
    const soft = { ...armSetup, stop: armSetup.stop.scaled(1e-6), hardLimitMm: null };
    expect(sentence(soft, { kind: "landing", heightM: 3 })).toBe(
      "In this event the wheel would rise farther than the layout can move. Measure what limits its travel, or check the arm's readings.",
    );
  });

  it("knows of no hard contact where no limit was measured", () => {
    const { result } = run({ ...armSetup, hardLimitMm: null }, landing);
    expect(result.peakWheelTravelMm).toBeGreaterThan(0);
    expect(result.hardContact).toBe(false);
    const low = { ...armSetup, hardLimitMm: result.peakWheelTravelMm - 5 };
    expect(run(low, landing).result.hardContact).toBe(true);
  });

  it("names one that is not finite", () => {
    expect(codeOf({ ...armSetup, sprungMassKg: Number.NaN }, landing)).toBe("impactNotFinite");
    expect(codeOf({ ...armSetup, wheelRateNPerMm: Number.POSITIVE_INFINITY }, landing)).toBe(
      "impactNotFinite",
    );
  });

  it("names a wheel that rises past the layout's reach", () => {
    const soft = { ...armSetup, stop: armSetup.stop.scaled(1e-6), hardLimitMm: null };
    expect(codeOf(soft, { kind: "landing", heightM: 3 })).toBe("impactPastReach");
  });

  it.each<DesignEvent>([
    { kind: "landing", heightM: Number.NaN },
    { kind: "landing", heightM: -1 },
    { kind: "obstacle", heightM: 0.1, lengthM: 0, speedKmPerH: 40 },
    { kind: "obstacle", heightM: 0.1, lengthM: 2, speedKmPerH: 0 },
    { kind: "obstacle", heightM: Number.POSITIVE_INFINITY, lengthM: 2, speedKmPerH: 40 },
  ])("names an event that cannot be: %o", (event) => {
    expect(codeOf(armSetup, event)).toBe("eventNotUsable");
  });

  it.each([
    "unsprungMassKg",
    "wheelRateNPerMm",
    "tyreRateNPerMm",
    "damperBumpNsPerMm",
    "damperReboundNsPerMm",
    "payloadPerCornerKg",
  ] as const)("names the ride value that is missing or cannot be: %s", (name) => {
    const { [name]: _, ...ride } = carrying.fitment.ride ?? {};
    const missing = impactSetupOf({ ...carrying.fitment, ride }, carrying.corner, { loaded: true });
    expect(missing).toMatchObject({
      ok: false,
      fault: { code: "rideUnknown", reading: `ride.${name}` },
    });
    const wrong = { ...carrying.fitment, ride: { ...carrying.fitment.ride, [name]: Number.NaN } };
    expect(impactSetupOf(wrong, carrying.corner, { loaded: true })).toMatchObject({
      ok: false,
      fault: { code: "rideNotUsable", reading: `ride.${name}` },
    });
  });

  it("names a corner weight that is missing or less than the unsprung mass", () => {
    const { cornerMassKg: _, ...unweighed } = arm.corner;
    expect(impactSetupOf(arm.fitment, unweighed, { loaded: true })).toMatchObject({
      ok: false,
      fault: { code: "rideUnknown", reading: "left.cornerMassKg" },
    });
    const light = { ...arm.corner, cornerMassKg: { values: [30], tol: 1 } };
    expect(impactSetupOf(arm.fitment, light, { loaded: true })).toMatchObject({
      ok: false,
      fault: { code: "noSprungMass" },
    });
  });
});
