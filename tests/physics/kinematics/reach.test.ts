import { describe, expect, it } from "vitest";
import type { Layout, Reading } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const reading = (value: number): Reading => ({ values: [value], tol: 0 });
function layoutOf(kind: Layout["kind"], readings: object): Layout {
  const entries = Object.entries(readings).map(([name, value]) => [name, reading(value)]);
  return { kind, wheelPerOuter: 1, readings: Object.fromEntries(entries) };
}

function arm(angles: object) {
  return unwrapped(
    kinematicsOf(layoutOf("arm", { pivotToStop: 150, pivotToOuter: 400, ...angles })),
  );
}

function damper(change: object) {
  const measured = { pivotToMount: 300, pivotToOuter: 400, damperLength: 400 };
  return kinematicsOf(layoutOf("damper", { ...measured, ...change }));
}

const sineOf = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
const cosineOf = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

/*
 * The branch on which s and z rise together ends where a line stands upright (what is out of
 * reach is an error value); the last 0.05° before that count as upright.
 */
describe("an arm's reach ends with the steeper of its lines", () => {
  it("its outer line, 60° down at ride, in droop", () => {
    const steepOuter = arm({ armAngle: 60, stopLineAngle: 0 });
    const droop = (turned: number) => 400 * (sineOf(60) - sineOf(60 + turned));
    expect(steepOuter.closing(droop(29.9)).ok).toBe(true);
    expect(steepOuter.closing(droop(29.97)).ok).toBe(false);
    // The stop line, 40° down then, would still close by −150·sin 40°, but the outer line is past upright.
    expect(steepOuter.wheelTravel(-150 * sineOf(29.9)).ok).toBe(true);
    expect(steepOuter.wheelTravel(-150 * sineOf(29.97)).ok).toBe(false);
    expect(steepOuter.wheelTravel(-150 * sineOf(40)).ok).toBe(false);
  });

  it("its stop line, 60° down at ride, in droop", () => {
    const steepStop = arm({ armAngle: 0, stopLineAngle: 60 });
    const opened = (turned: number) => 150 * (sineOf(60) - sineOf(60 + turned));
    expect(steepStop.wheelTravel(opened(29.9)).ok).toBe(true);
    expect(steepStop.wheelTravel(opened(29.97)).ok).toBe(false);
    expect(steepStop.closing(-400 * sineOf(29.9)).ok).toBe(true);
    expect(steepStop.closing(-400 * sineOf(29.97)).ok).toBe(false);
    expect(steepStop.closing(-400 * sineOf(35)).ok).toBe(false);
  });
});

describe("a damper's reach", () => {
  it("ends where the arm stands upright, the damper still far from its end", () => {
    const steep = unwrapped(damper({ armAngle: 60, mountLineAngle: 0 }));
    const droop = (turned: number) => 400 * (sineOf(60) - sineOf(60 + turned));
    // The lower mount goes from (300, 0) to 300·(cos, −sin); the upper one stays at (300, 400).
    const closing = (turned: number) =>
      400 - Math.hypot(300 - 300 * cosineOf(turned), 400 + 300 * sineOf(turned));
    expect(unwrapped(steep.closing(droop(29.9)))).toBeCloseTo(closing(29.9), 8);
    expect(steep.closing(droop(29.97)).ok).toBe(false);
    expect(unwrapped(steep.wheelTravel(closing(29.9)))).toBeCloseTo(droop(29.9), 8);
    expect(steep.wheelTravel(closing(29.97)).ok).toBe(false);
    expect(steep.wheelTravel(closing(40)).ok).toBe(false);
  });

  it("ends where it points at the pivot, and never passes through a length of 0", () => {
    const level = unwrapped(damper({}));
    // Pivot to upper mount 500 mm, to lower mount 300: in line at 200 mm. 300·500·(1 − cos γ)·2 more in L².
    const closingAt = (degrees: number) =>
      400 - Math.sqrt(200 ** 2 + 300_000 * (1 - cosineOf(degrees)));
    expect(level.wheelTravel(closingAt(0.06)).ok).toBe(true);
    expect(level.wheelTravel(closingAt(0.03)).ok).toBe(false);
    // Closed by twice its length, its length would be −400 mm.
    expect(level.wheelTravel(0).ok).toBe(true);
    expect(level.wheelTravel(800).ok).toBe(false);
  });

  const noTriangle = /^degenerateTriangle \(damperLength\): .* do not form a triangle\./;

  it("is none where the three points lie almost on one line", () => {
    // Across 50·cos 89.9° = 0.09 mm, along 250 mm: 0.02°.
    expect(refusal(damper({ damperLength: 50, stopLean: 89.9 }))).toMatch(noTriangle);
    expect(refusal(damper({ damperLength: 50, stopLean: 80 }))).toBe("none");
  });

  it("is none where the upper mount lies within a hundredth of the longer side from the pivot", () => {
    // Along 300 − 297.02 = 2.98, across 297.02·cos 89.94° = 0.31: 2.996 mm, below 3.
    expect(refusal(damper({ damperLength: 297.02, stopLean: 89.94 }))).toMatch(noTriangle);
    expect(refusal(damper({ damperLength: 296.9, stopLean: 89.94 }))).toBe("none");
  });
});

describe("a beam axle, where nothing is said of its movement", () => {
  const axle = layoutOf("axle", { track: 1600, stopSpacing: 960 });

  it("rises with both wheels", () => {
    expect(unwrapped(unwrapped(kinematicsOf(axle)).closing(100))).toBe(100);
    const { motion } = unwrapped(layoutPlan(axle));
    expect(motion.set(Float64Array.of(1600, 960, 1))).toBeNull();
    expect(motion.closing(100)).toBe(100);
  });
});
