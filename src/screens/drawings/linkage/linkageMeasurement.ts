import { belowHorizontal, distance, leaning, type Point } from "../../shapes/geometry.ts";
import {
  heightOver,
  inboard,
  lengthBetween,
  lineAngle,
  type Measurement,
  up,
} from "../../shapes/measurement.ts";
import type { DrawnNumbers } from "../drawnNumbers.ts";
import { type LinkageFromFront, type LinkageReading, otherArm } from "./linkageFromFront.ts";

const down: Point = { x: 0, y: -1 };
const outboard: Point = { x: 1, y: 0 };

/** What is marked for a reading of the linkage, mm of the front view. */
export function linkageMeasurement(
  reading: LinkageReading,
  numbers: DrawnNumbers,
  linkage: LinkageFromFront,
): Measurement {
  const { lowerPivot, lowerJoint, upper, top, wheelCentre, groundY } = linkage;
  const { pivot, joint } = otherArm(linkage);
  switch (reading) {
    case "otherArmAngle":
      return lineAngle(pivot, numbers.otherArmAngle, distance(pivot, joint));
    case "otherArmLength":
      return {
        ...lengthBetween(pivot, joint, belowHorizontal(numbers.otherArmAngle), up),
        offset: 42,
      };
    case "otherPivotHeight":
      return heightOver(groundY, pivot);
    case "otherOuterHeight":
      return heightOver(groundY, joint);
    case "jointHeight": {
      const level = { x: lowerJoint.x, y: lowerJoint.y + numbers.jointHeight };
      return { ...lengthBetween(lowerJoint, level, up, outboard), offset: 34 };
    }
    case "jointInset": {
      const from = upper?.joint ?? lowerJoint;
      return { ...lengthBetween(from, { x: lowerJoint.x, y: from.y }, outboard, up), offset: 44 };
    }
    case "tyreOffset": {
      const middle = { x: wheelCentre.x, y: lowerJoint.y };
      return { ...lengthBetween(lowerJoint, middle, outboard, down), offset: 44 };
    }
    case "wheelCentreAbove": {
      const level = { x: lowerJoint.x, y: wheelCentre.y };
      return { ...lengthBetween(lowerJoint, level, up, inboard), offset: 44 };
    }
    case "lowerArmLength":
      return {
        ...lengthBetween(lowerPivot, lowerJoint, belowHorizontal(numbers.lowerArmAngle), down),
        offset: 46,
      };
    case "lowerArmAngle":
      return lineAngle(lowerPivot, numbers.lowerArmAngle, distance(lowerPivot, lowerJoint));
    case "jointToTop":
      return {
        ...lengthBetween(lowerJoint, top ?? lowerJoint, leaning(numbers.jointToTopLean), outboard),
        offset: 60,
      };
    case "jointToTopLean":
      return {
        kind: "angle",
        vertex: lowerJoint,
        reference: 90,
        line: 90 + numbers.jointToTopLean,
        positive: 1,
        reach: numbers.jointToTop,
      };
  }
}
