import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { unwrapped } from "../demoFitments.ts";
import { number, otherArm, readingsOf, strutsWithArm } from "./arbitraryLayouts.ts";
import { armTo, dot, followed, minus, type Point, plus, radians, turned } from "./planarSolver.ts";

/*
 * Every linkage again as constraints: rigid links whose ends coincide, solved by Newton's method from the
 * ride height out in small steps.
 */

const measuredArm = fc.record({
  pivotToStop: number(100, 250),
  pivotToOuter: number(220, 500),
  armAngle: number(-20, 20),
});

type TwoArms = { readonly [Name in keyof typeof example]: number };
const example = {
  pivotToStop: 150,
  pivotToOuter: 400,
  armAngle: 8,
  otherArmAngle: 5,
  otherArmLength: 300,
  jointHeight: 280,
  jointInset: 40,
  tyreOffset: 90,
  wheelCentreAbove: 70,
};
const twoArms: fc.Arbitrary<TwoArms> = fc
  .tuple(measuredArm, otherArm)
  .map(([own, other]) => ({ ...own, ...other }));

const layoutOf = (armRole: "lower" | "upper", values: TwoArms): Layout => ({
  kind: "arm",
  armRole,
  readings: readingsOf(values),
});

/** Wheel travel for a rise of the measured arm's outer joint. */
function byConstraints(armRole: "lower" | "upper", values: TwoArms, rise: number): number {
  const own = armTo(values.pivotToOuter, values.armAngle);
  const other = armTo(values.otherArmLength, values.otherArmAngle);
  const [lower, upper] = armRole === "lower" ? [own, other] : [other, own];
  const carrier: Point = [-values.jointInset, values.jointHeight];
  const upperPivot = minus(plus(lower, carrier), upper);
  const contact: Point = [values.tyreOffset, -values.wheelCentreAbove];
  const [lowerTurn = Number.NaN, , carrierTurn = Number.NaN] = followed(
    (drive) =>
      ([l = 0, u = 0, c = 0]) => {
        const atLower = turned(lower, l);
        const atUpper = plus(upperPivot, turned(upper, u));
        const gap = minus(plus(atLower, turned(carrier, c)), atUpper);
        const driven =
          armRole === "lower" ? turned(lower, l)[1] - lower[1] : turned(upper, u)[1] - upper[1];
        return [gap[0], gap[1], driven - drive];
      },
    [0, 0, 0],
    rise,
  );
  // The wheel's centre, and the tire's contact a fixed radius below it: both rise alike.
  const centre: Point = [contact[0], values.wheelCentreAbove];
  const now = plus(turned(lower, lowerTurn), turned(centre, carrierTurn));
  return now[1] - plus(lower, centre)[1];
}

describe("two arms as a four-bar linkage", () => {
  it.each(["lower", "upper"] as const)(
    "with the stop on the %s arm, rises as the constraints say, to 1e-9",
    (armRole) => {
      let compared = 0;
      fc.assert(
        fc.property(twoArms, number(-80, 100), (values, rise) => {
          const outcome = kinematicsOf(layoutOf(armRole, values));
          fc.pre(outcome.ok);
          const travel = unwrapped(outcome).armPointTravel(values.pivotToOuter, rise);
          fc.pre(travel.ok);
          const wanted = byConstraints(armRole, values, rise);
          fc.pre(Number.isFinite(wanted));
          compared++;
          expect(Math.abs(unwrapped(travel) - wanted)).toBeLessThan(
            1e-9 * Math.max(1, Math.abs(wanted)),
          );
        }),
        { numRuns: 150 },
      );
      expect(compared).toBeGreaterThan(100);
    },
  );

  // Instant centre of the wheel carrier, at ride: 1 + e·τ and, for the upper joint's rise, 1 − k·τ.
  it("has κ = 1 + e·τ at ride, and (1 + e·τ)/(1 − k·τ) with the stop on the upper arm", () => {
    fc.assert(
      fc.property(twoArms, fc.constantFrom("lower", "upper"), (values, armRole) => {
        const role = armRole as "lower" | "upper";
        const outcome = kinematicsOf(layoutOf(role, values));
        fc.pre(outcome.ok);
        const tan = (degrees: number) => Math.tan(radians(degrees));
        const [lower, upper] =
          role === "lower"
            ? [tan(values.armAngle), tan(values.otherArmAngle)]
            : [tan(values.otherArmAngle), tan(values.armAngle)];
        const { jointHeight: h, jointInset: k, tyreOffset: e } = values;
        const turn = (lower - upper) / (h - k * upper);
        const kappa = (1 + e * turn) / (role === "lower" ? 1 : 1 - k * turn);
        // An upright stop on the arm's own line closes by a/b of the joint's rise.
        const ratio = unwrapped(unwrapped(outcome).ratio(0));
        expect(
          Math.abs((ratio * values.pivotToStop) / values.pivotToOuter / kappa - 1),
        ).toBeLessThan(1e-9);
      }),
      { numRuns: 200 },
    );
  });

  it("without the other arm's length keeps that κ over all its travel", () => {
    const { otherArmLength: _, ...without } = example;
    const layout: Layout = { kind: "arm", armRole: "lower", readings: readingsOf(without) };
    const linkage = unwrapped(kinematicsOf(layoutOf("lower", example)));
    const centre = unwrapped(kinematicsOf(layout));
    const kappa = (unwrapped(linkage.ratio(0)) * 150) / 400;
    const joint = unwrapped(
      kinematicsOf({
        kind: "arm",
        wheelPerOuter: kappa,
        readings: readingsOf({ pivotToStop: 150, pivotToOuter: 400, armAngle: 8 }),
      }),
    );
    for (const s of [-20, 10, 40]) {
      expect(unwrapped(centre.wheelTravel(s))).toBeCloseTo(unwrapped(joint.wheelTravel(s)), 9);
    }
  });
});

describe("a strut on its lower arm", () => {
  // The strut is a line fixed in the wheel carrier, on which the top mount stays; the stop closes along it.
  it("rises and closes as the constraints say, to 1e-9", () => {
    let compared = 0;
    fc.assert(
      fc.property(strutsWithArm, number(-70, 90), (values, rise) => {
        const outcome = kinematicsOf({ kind: "strut", readings: readingsOf(values) });
        fc.pre(outcome.ok);
        const joint = armTo(values.lowerArmLength, values.lowerArmAngle);
        const lean = radians(values.jointToTopLean);
        const up: Point = [-Math.sin(lean), Math.cos(lean)];
        const top = plus(joint, [up[0] * values.jointToTop, up[1] * values.jointToTop]);
        const axis = turned([0, 1], radians(values.stopLean));
        const across = turned([1, 0], radians(values.stopLean));
        const aside = dot(minus(top, joint), across);
        const along = dot(minus(top, joint), axis);
        const centre: Point = [values.tyreOffset, values.wheelCentreAbove];
        const [arm = Number.NaN, carrier = Number.NaN] = followed(
          (drive) =>
            ([a = 0, c = 0]) => [
              dot(minus(top, turned(joint, a)), turned(across, c)) - aside,
              turned(joint, a)[1] - joint[1] - drive,
            ],
          [0, 0],
          rise,
        );
        const now = turned(joint, arm);
        const travel = plus(now, turned(centre, carrier))[1] - plus(joint, centre)[1];
        const closing = along - dot(minus(top, now), turned(axis, carrier));
        fc.pre(Number.isFinite(travel));
        const kinematics = unwrapped(outcome);
        const [least, greatest] = kinematics.range;
        fc.pre(travel > least && travel < greatest);
        compared++;
        expect(Math.abs(unwrapped(kinematics.closing(travel)) - closing)).toBeLessThan(1e-9 * 100);
        expect(Math.abs(unwrapped(kinematics.wheelTravel(closing)) - travel)).toBeLessThan(
          1e-9 * 100,
        );
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it("with an upright strut over a level arm closes by nothing less than the joint rises", () => {
    const values = {
      stopLean: 0,
      lowerArmLength: 400,
      lowerArmAngle: 0,
      jointToTop: 700,
      tyreOffset: 0,
    };
    const kinematics = unwrapped(kinematicsOf({ kind: "strut", readings: readingsOf(values) }));
    expect(kinematics.linkage).toBe("strutArm");
    expect(unwrapped(kinematics.ratio(0))).toBeCloseTo(1, 12);
  });
});

describe("a point of the arm's own line", () => {
  it("rises with the arm: the outer joint of an arm that carries its wheel by the wheel's travel", () => {
    const layout: Layout = {
      kind: "arm",
      armRole: "carriesWheel",
      readings: readingsOf({ pivotToStop: 150, pivotToOuter: 400, armAngle: 20 }),
    };
    const kinematics = unwrapped(kinematicsOf(layout));
    expect(unwrapped(kinematics.armPointTravel(400, 60))).toBeCloseTo(60, 10);
    expect(unwrapped(kinematics.armPointTravel(200, 30))).toBeCloseTo(60, 10);
    const beyond = kinematics.armPointTravel(100, 150);
    expect(beyond.ok ? "" : beyond.fault.code).toBe("unreachable");
  });

  it("is on no strut and no axle", () => {
    const strut = unwrapped(kinematicsOf({ kind: "strut", readings: {} }));
    const none = strut.armPointTravel(200, 30);
    expect(none.ok ? "" : none.fault.code).toBe("noArm");
  });
});
