import { describe, expect, it } from "vitest";
import type { Corner, Fitment } from "../../../src/physics/fitment.ts";
import { impactSetupOf, settled } from "../../../src/physics/impact/impactSetup.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import {
  cornerDynamics,
  cornerDynamicsSteps,
} from "../../../src/physics/stiffness/cornerDynamics.ts";
import { tryEvents } from "../../../src/physics/stiffness/eventFailures.ts";
import {
  secantRate,
  stiffnessClasses,
  stiffnessClassOf,
} from "../../../src/physics/stop/stiffnessClass.ts";
import { type DemoCorner, demoCorners, demoFitment } from "../demoFitments.ts";

const arm = demoCorners[0] as DemoCorner;

function ended<Result>(steps: Generator<void, Result, void>): Result {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

describe("the stiffness window", () => {
  it("names what each other class fails on, and nothing for those that work", () => {
    for (const { fitment, corner } of demoCorners) {
      const { classesThatWork, failures } = cornerDynamics(fitment, corner);
      const failed = new Set(failures.map(({ stiffnessClass }) => stiffnessClass));
      expect(failed.size + (classesThatWork?.length ?? 0)).toBe(11);
      expect(classesThatWork?.some((each) => failed.has(each))).toBe(false);
    }
  });

  it("narrows as the cap falls, and says that none works where none does", () => {
    const windows = [4, 1.5, 1.05, 0.5].map((accelerationCapG) =>
      cornerDynamics({ ...arm.fitment, rules: { accelerationCapG } }, arm.corner),
    );
    const counts = windows.map(({ classesThatWork }) => classesThatWork?.length ?? -1);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(windows.at(-1)).toMatchObject({
      classesThatWork: [],
      classWindow: null,
      stiffnessSide: null,
    });
  });

  it("names the side: nearest class that works stiffer means this one is soft", () => {
    const soft = demoCorners.find(({ name }) => name.startsWith("damper")) as DemoCorner;
    expect(cornerDynamics(soft.fitment, soft.corner).stiffnessSide).toBe("soft");
  });

  it("what the checks are judged by is the same without what only the answer shows", () => {
    const named = ["foam-stop-tested", "upper-arm-stop", "stop-on-the-arm-missing"].map(
      demoFitment,
    );
    for (const fitment of [...demoCorners.map((demo) => demo.fitment), ...named]) {
      for (const corner of fitment.corners) {
        const whole = cornerDynamics(fitment, corner);
        const steps = cornerDynamicsSteps(fitment, corner, { judgedAlone: true });
        const { undampedEvents, failures, fromTest, ...judged } = ended(steps);
        const { undampedEvents: _, failures: all, fromTest: tested, ...same } = whole;
        expect(judged).toEqual(same);
        expect(undampedEvents).toBeNull();
        expect(fromTest === null || fromTest.passShare === tested?.passShare).toBe(true);
        const classes = (of: typeof all) => new Set(of.map((each) => each.stiffnessClass));
        expect(classes(failures)).toEqual(classes(all));
      }
    }
  });

  it("does its work in pieces: one an event tried", () => {
    const { fitment, corner } = demoCorners.at(-1) as DemoCorner;
    const pieces = [...cornerDynamicsSteps(fitment, corner)].length;
    // Laden each class and the stop, unladen those that pass so.
    expect(pieces).toBeGreaterThanOrEqual(2 * 11);
    expect(pieces).toBeLessThanOrEqual(4 * 12);
  });

  it.each<[string, Partial<Fitment>, string]>([
    ["the ride data are unknown", { ride: {} }, "rideUnknown"],
    ["no event is set", { rules: { events: [] } }, "noDesignEvent"],
    [
      "an event cannot be",
      { rules: { events: [{ kind: "landing", heightM: -1 }] } },
      "eventNotUsable",
    ],
  ])("is not known where %s, and says so", (_, change, code) => {
    const dynamics = cornerDynamics({ ...arm.fitment, ...change }, arm.corner);
    expect(dynamics.faults.map((fault) => fault.code)).toEqual([code]);
    expect(dynamics).toMatchObject({
      events: null,
      classesThatWork: null,
      classWindow: null,
      failures: [],
    });
  });

  it("holds classes that work laden and unladen, each from its own rest", () => {
    const works = (fitment: Fitment, corner: Corner, payload: number) =>
      cornerDynamics(
        { ...fitment, ride: { ...fitment.ride, payloadPerCornerKg: payload } },
        corner,
      );
    let unladenOnly = 0;
    for (const { fitment, corner } of demoCorners) {
      const payload = 250;
      const both = works(fitment, corner, payload);
      const empty = works(fitment, corner, 0);
      const laden = impactSetupOf(
        { ...fitment, ride: { ...fitment.ride, payloadPerCornerKg: payload } },
        corner,
        { loaded: true },
      );
      if (!laden.ok || both.classesThatWork === null) continue;
      const rate = secantRate(laden.value.stop);
      const worksLaden = stiffnessClasses.filter((stiffnessClass) => {
        const scaled = settled(laden.value, { stopScale: stiffnessClass / rate });
        if (!scaled.ok) return false;
        const steps = tryEvents(scaled.value, rulesOf(fitment.use));
        for (;;) {
          const step = steps.next();
          if (step.done) return step.value.failures.length === 0;
        }
      });
      const worksEmpty = empty.classesThatWork ?? [];
      expect(both.classesThatWork).toEqual(worksLaden.filter((each) => worksEmpty.includes(each)));
      unladenOnly += worksEmpty.filter((each) => !worksLaden.includes(each)).length;
    }
    expect(unladenOnly).toBeGreaterThan(0);
  });

  it("says what the stop itself fails on, and that it passes where it fails on nothing", () => {
    for (const { fitment, corner } of demoCorners) {
      const { events, ownFailures, stopItselfPasses } = cornerDynamics(fitment, corner);
      expect(stopItselfPasses).toBe(ownFailures.length === 0);
      const bottoms = ownFailures.some(({ kind, laden }) => kind === "fullStop" && laden);
      expect(events?.some(({ fullStop }) => fullStop)).toBe(bottoms);
    }
  });

  it("tells the side of a stop whose class works and that fails itself by what it fails on", () => {
    const { fitment, corner } = demoCorners.find(
      ({ name }) => name === "axle-towing-early left",
    ) as DemoCorner;
    const scaledTo = (factor: number): Fitment => ({
      ...fitment,
      stop: {
        ...fitment.stop,
        curve: fitment.stop.curve.map(([depth, force]) => [depth, factor * force] as const),
      },
    });
    const own = (factor: number) => cornerDynamics(scaledTo(factor), corner);
    // 100 N/mm as it is. The edge of what passes lies below the least class that works, or above.
    const seen = new Set<string>();
    for (const factor of [0.515, 0.55, 0.6, 0.63, 3.9, 4.4, 4.8, 5]) {
      const { classesThatWork, stopItselfPasses, stiffnessSide } = own(factor);
      const stopClass = stiffnessClassOf(100 * factor);
      if (!classesThatWork?.includes(stopClass)) continue;
      if (stopItselfPasses) expect(stiffnessSide).toBeNull();
      else {
        expect(stiffnessSide).toBe(factor < 1 ? "soft" : "stiff");
        seen.add(`${stiffnessSide}`);
      }
    }
    expect(seen.size).toBeGreaterThan(0);
  });

  it("shows a stop tested at speed beside itself without loss, another alone", () => {
    for (const { name, fitment, corner } of demoCorners) {
      const { events, undampedEvents } = cornerDynamics(fitment, corner);
      if (!name.startsWith("damper")) {
        expect(undampedEvents).toBeNull();
        continue;
      }
      const untested = {
        ...fitment,
        stop: { ...fitment.stop, damping: null, testedAtSpeed: false },
      };
      expect(undampedEvents).toEqual(cornerDynamics(untested, corner).events);
      for (const [index, undamped] of (undampedEvents ?? []).entries()) {
        const damped = events?.[index];
        expect(damped?.leaveSpeedMmPerS).toBeLessThanOrEqual(undamped.leaveSpeedMmPerS);
      }
    }
  });

  it("keeps the stop's damping unscaled: a damped stop is not its undamped self at any class", () => {
    const { fitment, corner } = demoCorners.find(({ name }) =>
      name.startsWith("damper"),
    ) as DemoCorner;
    const undamped = { ...fitment, stop: { ...fitment.stop, damping: null, testedAtSpeed: false } };
    const figures = (each: Fitment) =>
      cornerDynamics(each, corner).events?.map((e) => e.energyOutJ);
    expect(figures(undamped)).not.toEqual(figures(fitment));
  });
});
