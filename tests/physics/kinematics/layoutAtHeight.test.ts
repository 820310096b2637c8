import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Layout, Reading } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutAtHeight } from "../../../src/physics/kinematics/layoutAtHeight.ts";
import { faultCode, given } from "../stopTests/outcomes.ts";

const exactly = (value: number): Reading => ({ values: [value], tol: 0 });

const arm: Layout = {
  kind: "arm",
  readings: {
    pivotToStop: exactly(152),
    pivotToOuter: exactly(411),
    armAngle: exactly(8),
    stopLineAngle: exactly(11),
    stopLean: exactly(5),
  },
};
const damper: Layout = {
  kind: "damper",
  wheelPerOuter: 1.1,
  readings: {
    pivotToMount: exactly(268),
    pivotToOuter: exactly(405),
    armAngle: exactly(6),
    mountLineAngle: exactly(9),
    stopLean: exactly(17),
    damperLength: exactly(412),
  },
};
const strut: Layout = { kind: "strut", readings: { stopLean: exactly(13) } };
const axle: Layout = {
  kind: "axle",
  readings: { track: exactly(1560), stopSpacing: exactly(980), stopLean: exactly(4) },
};

/** Moving the zero of both travels is all that another ride height does to the same mechanism. */
test("raised, every layout moves as the same mechanism from another zero", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(arm, damper, strut, axle),
      fc.double({ min: -50, max: 90, noNaN: true }),
      fc.double({ min: -20, max: 80, noNaN: true }),
      (layout, raised, travel) => {
        const usual = given(kinematicsOf(layout));
        const { layout: standing, openedMm } = given(layoutAtHeight(layout, raised, 0));
        const moved = given(given(kinematicsOf(standing)).closing(travel));
        const start = given(usual.closing(-raised));
        expect(openedMm).toBeCloseTo(-start, 9);
        expect(moved).toBeCloseTo(given(usual.closing(travel - raised)) - start, 8);
      },
    ),
  );
});

describe("the ± of the height", () => {
  test("joins that of the angles: the change per mm of the arm's turn", () => {
    const near = given(layoutAtHeight(arm, 60, 0)).layout;
    const far = given(layoutAtHeight(arm, 61, 0)).layout;
    const angle = (layout: Layout) =>
      layout.kind === "arm" ? (layout.readings.armAngle?.values[0] ?? 0) : 0;
    const doubted = given(layoutAtHeight(arm, 60.5, 1)).layout;
    const tol = doubted.kind === "arm" ? doubted.readings.armAngle?.tol : 0;
    expect(tol).toBeCloseTo(angle(far) - angle(near), 4);
  });

  test("the gap opens per mm by the inverse lever ratio", () => {
    const { openedPerMm } = given(layoutAtHeight(damper, 30, 0));
    const more = given(layoutAtHeight(damper, 30.5, 0)).openedMm;
    const less = given(layoutAtHeight(damper, 29.5, 0)).openedMm;
    expect(openedPerMm).toBeCloseTo(more - less, 5);
  });
});

test("a height that the arm cannot reach is refused in a sentence", () => {
  expect(faultCode(layoutAtHeight(arm, 500, 0))).toBe("heightOutOfReach");
});
