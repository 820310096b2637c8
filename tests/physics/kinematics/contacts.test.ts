import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { unwrapped } from "../demoFitments.ts";
import { number, reading, readingsOf } from "./arbitraryLayouts.ts";
import { armTo, dot, minus, type Point, plus, radians, turned } from "./planarSolver.ts";

/*
 * A flat pad against a stop, by points and lines in the plane: the pad's line and the stop's axis, of which one
 * turns with the arm, are cut by plain coordinates.
 */

const arms = fc.record({
  pivotToStop: number(80, 300),
  armAngle: number(-20, 20),
  stopLineAngle: number(-20, 20),
  stopLean: number(-15, 15),
});

interface Arm {
  readonly pivotToStop: number;
  readonly armAngle: number;
  readonly stopLineAngle: number;
  readonly stopLean: number;
}

const outer = 400;

/** An arm that carries its wheel: the wheel's travel gives the turn. */
function layoutOf(stopOn: "frame" | "arm", arm: Arm): Layout {
  return {
    kind: "arm",
    stopOn,
    armRole: "carriesWheel",
    readings: readingsOf({ ...arm, pivotToOuter: outer }),
  };
}

function turnAt(arm: Arm, z: number): number {
  const start = radians(arm.armAngle);
  return start - Math.asin(Math.sin(start) - z / outer);
}

/** How far along `axis` from `from` the line through `point` square to `normal` is met. */
function along(from: Point, axis: Point, point: Point, normal: Point): number {
  return dot(minus(point, from), normal) / dot(axis, normal);
}

describe("a flat pad", () => {
  it("on the arm meets a stop on the frame where its turned line cuts the stop's axis", () => {
    fc.assert(
      fc.property(arms, number(-60, 100), (arm, z) => {
        const contact = armTo(arm.pivotToStop, arm.stopLineAngle);
        const axis = turned([0, 1], radians(arm.stopLean));
        const turn = turnAt(arm, z);
        const kinematics = unwrapped(kinematicsOf(layoutOf("frame", arm)));
        fc.pre(z > kinematics.range[0] && z < kinematics.range[1]);
        const closing = along(contact, axis, turned(contact, turn), turned(axis, turn));
        expect(unwrapped(kinematics.closing(z))).toBeCloseTo(closing, 9);
        expect(unwrapped(kinematics.wheelTravel(closing))).toBeCloseTo(z, 8);
      }),
      { numRuns: 200 },
    );
  });

  it("on the frame meets a stop on the arm where the turned axis cuts its line", () => {
    fc.assert(
      fc.property(arms, number(0, 60), number(-60, 100), (arm, gap, z) => {
        const tip = armTo(arm.pivotToStop, arm.stopLineAngle);
        const axis = turned([0, 1], radians(arm.stopLean));
        const pad: Point = plus(tip, [gap * axis[0], gap * axis[1]]);
        const turn = turnAt(arm, z);
        const side = { gap: reading(gap) };
        const kinematics = unwrapped(kinematicsOf(layoutOf("arm", arm), side));
        fc.pre(z > kinematics.range[0] && z < kinematics.range[1]);
        const left = along(turned(tip, turn), turned(axis, turn), pad, axis);
        expect(unwrapped(kinematics.closing(z))).toBeCloseTo(gap - left, 9);
        expect(unwrapped(kinematics.wheelTravel(gap - left))).toBeCloseTo(z, 8);
      }),
      { numRuns: 200 },
    );
  });

  it("closes like a round contact at ride, and differs as the arm turns", () => {
    const arm = { pivotToStop: 150, armAngle: 5, stopLineAngle: 8, stopLean: 6 };
    const { stopOn: _, ...round } = { ...layoutOf("frame", arm), stopOn: undefined };
    const plain = unwrapped(kinematicsOf(round));
    for (const stopOn of ["frame", "arm"] as const) {
      const flat = unwrapped(kinematicsOf(layoutOf(stopOn, arm), { gap: reading(30) }));
      expect(unwrapped(flat.ratio(0))).toBeCloseTo(unwrapped(plain.ratio(0)), 12);
      const differs = unwrapped(flat.wheelTravel(40)) - unwrapped(plain.wheelTravel(40));
      expect(Math.abs(differs)).toBeGreaterThan(0.5);
    }
  });

  it("is out of reach where its closing turns back, in a sentence", () => {
    const steep = { pivotToStop: 150, armAngle: 0, stopLineAngle: 45, stopLean: 20 };
    const kinematics = unwrapped(kinematicsOf(layoutOf("frame", steep)));
    const most = unwrapped(kinematics.closing(kinematics.range[1]));
    const beyond = kinematics.wheelTravel(most + 1);
    expect(beyond.ok ? "" : beyond.fault.code).toBe("unreachable");
  });
});
