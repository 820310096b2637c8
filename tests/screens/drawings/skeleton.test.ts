import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Layout, LayoutKind, Reading } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutKinds } from "../../../src/physics/layouts/layoutKinds.ts";
import { type DrawingValues, drawnNumbers } from "../../../src/screens/drawings/drawnNumbers.ts";
import { measurementOf } from "../../../src/screens/drawings/measurement.ts";
import { skeletonOf } from "../../../src/screens/drawings/skeletonOf.ts";
import { distance, radians } from "../../../src/screens/shapes/geometry.ts";

const reading = (value: number): Reading => ({ values: [value], tol: 0 });
const skeleton = (kind: LayoutKind, values: DrawingValues) =>
  skeletonOf(kind, "gap", drawnNumbers(kind, "gap", values));

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const armValues = fc.record({
  pivotToStop: range(80, 400),
  pivotToOuter: range(300, 700),
  armAngle: range(-10, 25),
  stopLineAngle: range(-10, 30),
  stopLean: range(-15, 25),
});
const damperValues = fc.record({
  pivotToMount: range(150, 400),
  pivotToOuter: range(300, 700),
  armAngle: range(-10, 25),
  mountLineAngle: range(-10, 25),
  stopLean: range(-10, 30),
  damperLength: range(300, 600),
});
const swing = range(-6, 10);

/** Wheel travel of an arm swung up by `swing`, from the outer joint's height in the drawing. */
function travel(before: { outer: { y: number } }, after: { outer: { y: number } }): number {
  return after.outer.y - before.outer.y;
}

function closing(layout: Layout, wheelTravel: number): number {
  const kinematics = kinematicsOf(layout);
  if (!kinematics.ok) throw new Error(kinematics.fault.code);
  const value = kinematics.value.closing(wheelTravel);
  if (!value.ok) throw new Error(value.fault.code);
  return value.value;
}

describe("what is drawn is what is computed", () => {
  it("moves an arm's pad along the stop's axis by the closing of the kinematics", () => {
    fc.assert(
      fc.property(armValues, swing, (values, degrees) => {
        const before = skeleton("arm", values);
        const after = skeleton("arm", {
          ...values,
          armAngle: values.armAngle - degrees,
          stopLineAngle: values.stopLineAngle - degrees,
        });
        const layout: Layout = {
          kind: "arm",
          wheelPerOuter: 1,
          readings: {
            pivotToStop: reading(values.pivotToStop),
            pivotToOuter: reading(values.pivotToOuter),
            armAngle: reading(values.armAngle),
            stopLineAngle: reading(values.stopLineAngle),
            stopLean: reading(values.stopLean),
          },
        };
        const drawn =
          (after.pad.x - before.pad.x) * before.axis.x +
          (after.pad.y - before.pad.y) * before.axis.y;
        expect(drawn).toBeCloseTo(closing(layout, travel(before, after)), 6);
      }),
    );
  });

  it("shortens a damper between its bolts by the closing of the kinematics", () => {
    fc.assert(
      fc.property(damperValues, swing, (values, degrees) => {
        const at = (armAngle: number, mountLineAngle: number) => {
          const all = { ...values, armAngle, mountLineAngle };
          return skeletonOf("damper", "damperLength", drawnNumbers("damper", "damperLength", all));
        };
        const before = at(values.armAngle, values.mountLineAngle);
        const after = at(values.armAngle - degrees, values.mountLineAngle - degrees);
        const layout: Layout = {
          kind: "damper",
          wheelPerOuter: 1,
          readings: {
            pivotToMount: reading(values.pivotToMount),
            pivotToOuter: reading(values.pivotToOuter),
            armAngle: reading(values.armAngle),
            mountLineAngle: reading(values.mountLineAngle),
            stopLean: reading(values.stopLean),
            damperLength: reading(values.damperLength),
          },
        };
        const drawn = values.damperLength - distance(before.head, after.foot);
        expect(drawn).toBeCloseTo(closing(layout, travel(before, after)), 6);
      }),
    );
  });
});

describe("skeletonOf", () => {
  it("stands the gap and the stop's height along the axis in every layout", () => {
    const kinds = fc.constantFrom(...layoutKinds);
    fc.assert(
      fc.property(
        kinds,
        range(0, 200),
        range(20, 150),
        range(-30, 30),
        (kind, gap, height, lean) => {
          const values = { gap, freeHeight: height, stopLean: lean };
          const { pad, stopFace, stopTop, axis } = skeleton(kind, values);
          expect(distance(pad, stopFace)).toBeCloseTo(gap, 9);
          expect(distance(stopFace, stopTop)).toBeCloseTo(height, 9);
          expect(Math.atan2(-axis.x, axis.y)).toBeCloseTo(radians(lean), 9);
          const up = (stopTop.x - pad.x) * axis.x + (stopTop.y - pad.y) * axis.y;
          expect(up).toBeCloseTo(gap + height, 9);
        },
      ),
    );
  });

  it("sets stops and wheels of an axle at half their distances", () => {
    const { pad, wheelCentre } = skeleton("axle", { track: 1560, stopSpacing: 890 });
    expect(pad.x).toBe(445);
    expect(wheelCentre.x).toBe(780);
  });

  it("keeps part of a damper as its body, even where gap and stop fill its length", () => {
    const values = { damperLength: 200, gap: 150, freeHeight: 150 };
    const numbers = drawnNumbers("damper", "damperLength", values);
    const { foot, pad, head } = skeletonOf("damper", "damperLength", numbers);
    expect(distance(foot, head)).toBeCloseTo(200, 9);
    expect(distance(foot, pad)).toBeGreaterThanOrEqual(0.4 * 200 - 1e-9);
  });
});

describe("measurementOf", () => {
  it("has the vehicle's left as A across an axle, whichever side is drawn", () => {
    const numbers = drawnNumbers("axle", "track", { track: 1500 });
    const points = skeletonOf("axle", "track", numbers);
    const left = measurementOf("track", numbers, points, "left");
    const right = measurementOf("track", numbers, points, "right");
    expect(left.kind === "length" && left.a.x).toBe(750);
    expect(right.kind === "length" && right.a.x).toBe(-750);
  });

  it("marks a limit given at the stop along the stop's axis from its pad", () => {
    const numbers = drawnNumbers("arm", "limit:metal", { "limit:metal": 70, stopLean: 10 });
    const points = skeletonOf("arm", "limit:metal", numbers);
    const measured = measurementOf("limit:metal", numbers, points, "left", "stop");
    if (measured.kind !== "length") throw new Error(measured.kind);
    expect(measured.a).toEqual(points.pad);
    expect(measured.b.x - measured.a.x).toBeCloseTo(70 * points.axis.x, 9);
    expect(measured.b.y - measured.a.y).toBeCloseTo(70 * points.axis.y, 9);
  });
});
