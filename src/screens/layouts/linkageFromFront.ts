import { add, belowHorizontal, leaning, type Point, tyreRadius } from "../shapes/geometry.ts";
import type { DrawnNumbers } from "./pictured.ts";

/**
 * Both arms, or the arm and the strut above it, in front view: mm, x outboard, y up, the lower arm's
 * pivot line the origin.
 */
export interface LinkageFromFront {
  readonly lowerPivot: Point;
  readonly lowerJoint: Point;
  /** Of two arms; null under a strut. */
  readonly upper: { readonly pivot: Point; readonly joint: Point } | null;
  /** The middle of the strut's top mount; null with two arms. */
  readonly top: Point | null;
  readonly wheelCentre: Point;
  readonly groundY: number;
  /** Which of the two arms is the other one, the one not measured first. */
  readonly other: "upper" | "lower";
}

export function linkageFromFront(
  numbers: DrawnNumbers,
  strut: boolean,
  armRole: string | undefined,
): LinkageFromFront {
  const lowerPivot = { x: 0, y: 0 };
  const upperMeasured = !strut && armRole === "upper";
  const measured = { length: numbers.pivotToOuter, angle: numbers.armAngle };
  const another = { length: numbers.otherArmLength, angle: numbers.otherArmAngle };
  const lower = strut
    ? { length: numbers.lowerArmLength, angle: numbers.lowerArmAngle }
    : upperMeasured
      ? another
      : measured;
  const upper = upperMeasured ? measured : another;
  const lowerJoint = add(lowerPivot, belowHorizontal(lower.angle), lower.length);
  const joint = add(lowerJoint, { x: -numbers.jointInset, y: numbers.jointHeight });
  const wheelCentre = add(lowerJoint, { x: numbers.tyreOffset, y: numbers.wheelCentreAbove });
  return {
    lowerPivot,
    lowerJoint,
    upper: strut ? null : { joint, pivot: add(joint, belowHorizontal(upper.angle), -upper.length) },
    top: strut ? add(lowerJoint, leaning(numbers.jointToTopLean), numbers.jointToTop) : null,
    wheelCentre,
    groundY: wheelCentre.y - tyreRadius,
    other: upperMeasured ? "lower" : "upper",
  };
}

/** The two ends of the arm that is not measured first. */
export function otherArm(linkage: LinkageFromFront): {
  readonly pivot: Point;
  readonly joint: Point;
} {
  const { lowerPivot, lowerJoint, upper, other } = linkage;
  return other === "upper" && upper !== null ? upper : { pivot: lowerPivot, joint: lowerJoint };
}
