import fc from "fast-check";
import { expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutAtHeight } from "../../../src/physics/kinematics/layoutAtHeight.ts";
import { unwrapped } from "../demoFitments.ts";
import { number, readingsOf } from "./arbitraryLayouts.ts";

const arm = { pivotToOuter: 400, armAngle: 8 };
const joints = { jointHeight: 280, jointInset: 40, tyreOffset: 90, wheelCentreAbove: 70 };
const other = { otherArmAngle: 5, otherArmLength: 300 };
const layouts: readonly Layout[] = [
  {
    kind: "arm",
    armRole: "lower",
    readings: readingsOf({ pivotToStop: 150, stopLineAngle: 11, ...arm, ...joints, ...other }),
  },
  {
    kind: "arm",
    armRole: "upper",
    readings: readingsOf({ pivotToStop: 120, pivotToOuter: 280, armAngle: 3, ...joints, ...other }),
  },
  {
    kind: "damper",
    armRole: "lower",
    readings: readingsOf({
      pivotToMount: 240,
      damperLength: 420,
      stopLean: 12,
      mountLineAngle: 6,
      ...arm,
      ...joints,
      ...other,
    }),
  },
  {
    kind: "arm",
    armRole: "lower",
    readings: readingsOf({ pivotToStop: 150, ...arm, ...joints, otherArmAngle: 5 }),
  },
  {
    kind: "strut",
    readings: readingsOf({
      stopLean: 12,
      lowerArmLength: 380,
      lowerArmAngle: 6,
      jointToTop: 650,
      jointToTopLean: 15,
      tyreOffset: 70,
      wheelCentreAbove: 60,
    }),
  },
  {
    kind: "arm",
    armRole: "carriesWheel",
    readings: readingsOf({
      pivotToStop: 150,
      pivotToOuter: 400,
      pivotHeight: 420,
      outerHeight: 360,
      stopHeight: 400,
    }),
  },
];

/** Moving the zero of both travels is all that another ride height does to the same mechanism. */
it("raised, every linkage moves as the same mechanism from another zero", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...layouts),
      number(-40, 70),
      number(-20, 60),
      (layout, raised, travel) => {
        const usual = unwrapped(kinematicsOf(layout));
        const { layout: standing, openedMm } = unwrapped(layoutAtHeight(layout, raised, 0));
        const moved = unwrapped(kinematicsOf(standing));
        const start = unwrapped(usual.closing(-raised));
        expect(openedMm).toBeCloseTo(-start, 9);
        expect(unwrapped(moved.closing(travel))).toBeCloseTo(
          unwrapped(usual.closing(travel - raised)) - start,
          7,
        );
      },
    ),
    { numRuns: 120 },
  );
});
