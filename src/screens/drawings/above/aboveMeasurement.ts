import type { ArmLength } from "../../shapes/armLength.ts";
import { distance, type Point } from "../../shapes/geometry.ts";
import { lengthBetween, type Measurement } from "../../shapes/measurement.ts";
import type { DrawingValues } from "../drawnNumbers.ts";
import { type ArmFromAbove, armFromAbove, footOf } from "./armFromAbove.ts";

/** The arm to the numbers typed so far. `onArm`: a clearance on the arm is asked for, to its distance. */
export function armOfValues(
  values: DrawingValues,
  onArm: boolean,
  trailing: boolean,
): ArmFromAbove {
  return armFromAbove(
    {
      boltSpacing: values.boltSpacing,
      square: {
        Stop: onArm ? values.limitDistance : values.pivotToStop,
        Outer: values.pivotToOuter,
        Mount: values.pivotToMount,
      },
      fromFrontBolt: {
        Stop: onArm ? undefined : values.frontBoltToStop,
        Outer: values.frontBoltToOuter,
        Mount: values.frontBoltToMount,
      },
      fromRearBolt: {
        Stop: onArm ? undefined : values.rearBoltToStop,
        Outer: values.rearBoltToOuter,
        Mount: values.rearBoltToMount,
      },
    },
    trailing,
  );
}

/** The tape: on the measured points themselves, but for the bolts' spacing, which runs inboard. */
export function aboveMeasurement({ start, end }: ArmLength, arm: ArmFromAbove): Measurement {
  const inboard = { x: -arm.square.x, y: -arm.square.y };
  if (end === "rearBolt") {
    return { ...lengthBetween(arm.frontBolt, arm.rearBolt, arm.along, inboard), offset: 40 };
  }
  const from = start === "pivotLine" ? footOf(arm, end) : arm[start];
  const to = arm.points[end];
  return {
    ...lengthBetween(from, to, unit(from, to), arm.along),
    offset: 0,
    numberBeside: true,
  };
}

function unit(from: Point, to: Point): Point {
  const length = Math.max(distance(from, to), 1e-6);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
