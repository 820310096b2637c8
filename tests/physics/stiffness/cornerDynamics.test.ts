import { describe, expect, it } from "vitest";
import type { Fitment } from "../../../src/physics/fitment.ts";
import {
  cornerDynamics,
  cornerDynamicsSteps,
} from "../../../src/physics/stiffness/cornerDynamics.ts";
import { type DemoCorner, demoCorners } from "../demoFitments.ts";

const arm = demoCorners[0] as DemoCorner;

describe("the stiffness window", () => {
  it.each(demoCorners.map((demo) => [demo.name, demo] as const))(
    "agrees with the vectors: %s",
    (_, { fitment, corner, wanted }) => {
      const dynamics = cornerDynamics(fitment, corner);
      expect(dynamics.faults).toEqual([]);
      expect(dynamics.classesThatWork).toEqual(wanted.classesThatWork);
      expect(dynamics.classWindow).toEqual(wanted.classWindow);
      expect(dynamics.stiffnessSide).toBe(wanted.stiffnessSide);
      expect(dynamics.events).toHaveLength(wanted.events.length);
    },
  );

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

  it("does its work in pieces: one an event tried", () => {
    const { fitment, corner } = demoCorners.at(-1) as DemoCorner;
    const pieces = [...cornerDynamicsSteps(fitment, corner)].length;
    expect(pieces).toBeGreaterThanOrEqual(2 * 11);
    expect(pieces).toBeLessThanOrEqual(2 * 12);
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
