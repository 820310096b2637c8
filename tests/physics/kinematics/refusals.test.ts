import { describe, expect, it } from "vitest";
import type { Layout, Reading } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutAtHeight } from "../../../src/physics/kinematics/layoutAtHeight.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const exactly = (value: number, tol = 0): Reading => ({ values: [value], tol });

function arm(change: Record<string, Reading> = {}, wheelPerOuter = 1): Layout {
  return {
    kind: "arm",
    wheelPerOuter,
    readings: { pivotToStop: exactly(150), pivotToOuter: exactly(400), ...change },
  } as Layout;
}

function damper(change: Record<string, Reading> = {}): Layout {
  return {
    kind: "damper",
    wheelPerOuter: 1,
    readings: {
      pivotToMount: exactly(300),
      pivotToOuter: exactly(400),
      damperLength: exactly(400),
      ...change,
    },
  } as Layout;
}

describe("a layout that gives no motion says which reading to take again", () => {
  const perOuter =
    "wheelPerOuterNotPositive (wheelPerOuter): The wheel's travel per travel of the outer joint must be a number above zero, its ± zero or more.";
  const flat =
    "stopLeansFlat (stopLean): The stop lies flat, so the wheel cannot close it. Re-measure its lean.";
  const upright =
    "armTooSteep (armAngle): The arm stands upright, so it cannot move the wheel. Re-measure the arm angle.";
  const noLever =
    "leverLost (stopLean): With these angles the stop's axis points along the arm, so it has no lever. Re-measure the lean and the angles.";
  it.each<[Layout, string]>([
    [arm(), "none"],
    [arm({}, 1000), "none"],
    [arm({}, 1000.1), perOuter],
    [arm({}, 0), perOuter],
    [arm({}, Number.NaN), perOuter],
    [arm({ armAngle: exactly(89.96) }), upright],
    [arm({ armAngle: exactly(-89.96) }), upright],
    [arm({ stopLean: exactly(89.96) }), noLever],
    [arm({ armAngle: exactly(60), stopLean: exactly(30) }), noLever],
    [{ kind: "strut", readings: { stopLean: exactly(89.96) } }, flat],
    [{ kind: "strut", readings: { stopLean: exactly(-89.96) } }, flat],
    [{ kind: "strut", readings: { stopLean: exactly(89.9) } }, "none"],
    [
      {
        kind: "axle",
        readings: { track: exactly(1500), stopSpacing: exactly(900), stopLean: exactly(89.96) },
      },
      flat,
    ],
    [damper(), "none"],
    [damper({ armAngle: exactly(89.96), mountLineAngle: exactly(0) }), upright],
    [
      damper({ damperLength: exactly(300), stopLean: exactly(89.9) }),
      "degenerateTriangle (damperLength): With these readings the pivot and the shock's two mounts do not form a triangle. Re-measure the shock length and the lean.",
    ],
  ])("%#", (layout, words) => {
    expect(refusal(kinematicsOf(layout))).toBe(words);
  });
});

describe("a side that was measured apart", () => {
  it("names its own reading", () => {
    const own = { stopLean: exactly(89.96) };
    expect(refusal(kinematicsOf(arm(), { geometry: own, side: "right" }))).toBe(
      "leverLost (right.stopLean): With these angles the stop's axis points along the arm, so it has no lever. Re-measure the lean and the angles.",
    );
  });
});

describe("a place that a layout cannot reach", () => {
  const level = () => unwrapped(kinematicsOf(arm()));

  it("is told in words: a wheel travel, a closing, a ratio there", () => {
    const travel =
      "unreachable: The suspension cannot reach a wheel travel of 500.0 mm. Check the readings.";
    expect(refusal(level().closing(500))).toBe(travel);
    expect(refusal(level().ratio(500))).toBe(travel);
    expect(refusal(level().wheelTravel(500))).toBe(
      "unreachable: The suspension cannot close the stop by 500.0 mm. Check the readings.",
    );
  });

  it("is no number", () => {
    const noTravel = "unreachable: A wheel travel is not a usable number. Check the readings.";
    expect(refusal(level().closing(Number.NaN))).toBe(noTravel);
    expect(refusal(level().ratio(Number.POSITIVE_INFINITY))).toBe(noTravel);
    expect(refusal(level().wheelTravel(Number.NaN))).toBe(
      "unreachable: A closing of the stop is not a usable number. Check the readings.",
    );
  });

  it("is past a straight guide's million millimetres", () => {
    const strut = unwrapped(kinematicsOf({ kind: "strut", readings: {} }));
    expect(strut.range).toEqual([-1e6, 1e6]);
    expect(unwrapped(strut.closing(1e6))).toBe(1e6);
    expect(unwrapped(strut.wheelTravel(-1e6))).toBe(-1e6);
    expect(strut.closing(1e6 + 1).ok).toBe(false);
    expect(strut.wheelTravel(-1e6 - 1).ok).toBe(false);
  });
});

describe("a layout at another height", () => {
  it("is refused beyond what its springs can reach, above and below", () => {
    const words = (side: string) =>
      `heightOutOfReach: The ride height is 500.0 mm ${side} the usual one, which this suspension cannot reach by its springs. Re-measure the ride height, from the wheel's center to the fender.`;
    expect(refusal(layoutAtHeight(arm(), 500, 0))).toBe(words("above"));
    expect(refusal(layoutAtHeight(arm(), -500, 0))).toBe(words("below"));
  });

  it("names what the layout itself lacks", () => {
    expect(refusal(layoutAtHeight(arm({ armAngle: exactly(89.96) }), 10, 0))).toBe(
      "armTooSteep (armAngle): The arm stands upright, so it cannot move the wheel. Re-measure the arm angle.",
    );
  });

  // A level arm of 400 mm raised by 200 mm points 30° down.
  it("turns an arm's lines that were measured, and those alone", () => {
    const plain = unwrapped(layoutAtHeight(arm(), 200, 0)).layout;
    expect(plain.kind === "arm" && plain.readings.armAngle?.values[0]).toBeCloseTo(30, 9);
    expect(plain.readings).not.toHaveProperty("stopLineAngle");
    const lined = arm({ armAngle: exactly(0, 0.5), stopLineAngle: exactly(5, 0.5) });
    const turned = unwrapped(layoutAtHeight(lined, 200, 0)).layout;
    expect(turned.kind === "arm" && turned.readings.stopLineAngle?.values[0]).toBeCloseTo(35, 9);
    expect(turned.kind === "arm" && turned.readings.stopLineAngle?.tol).toBe(0.5);
  });

  it("turns a damper's lines likewise, and leans and lengthens it about its upper mount", () => {
    const at = unwrapped(layoutAtHeight(damper({ mountLineAngle: exactly(0) }), 200, 0)).layout;
    if (at.kind !== "damper") throw new Error("not a damper");
    // The lower mount goes from (300, 0) to 300·(cos 30°, −sin 30°); the upper stays at (300, 400).
    const across = 300 - 300 * Math.cos(Math.PI / 6);
    const long = Math.hypot(across, 550);
    expect(at.readings.armAngle?.values[0]).toBeCloseTo(30, 9);
    expect(at.readings.mountLineAngle?.values[0]).toBeCloseTo(30, 9);
    expect(at.readings.damperLength?.values[0]).toBeCloseTo(long, 9);
    expect(at.readings.stopLean?.values[0]).toBeCloseTo(
      (-Math.atan2(across, 550) * 180) / Math.PI,
      9,
    );
    expect(at.readings.stopLean?.tol).toBe(0);
    expect(unwrapped(layoutAtHeight(damper(), 200, 0)).layout.readings).not.toHaveProperty(
      "mountLineAngle",
    );
  });

  it("leaves strut and axle as they are", () => {
    const strut: Layout = { kind: "strut", readings: { stopLean: exactly(10) } };
    expect(unwrapped(layoutAtHeight(strut, 50, 1)).layout).toBe(strut);
  });
});
