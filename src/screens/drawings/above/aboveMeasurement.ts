import { distance, type Point } from "../../shapes/geometry.ts";
import { lengthBetween, type Measurement } from "../../shapes/measurement.ts";
import type { DrawingValues, PicturedReading } from "../drawnNumbers.ts";
import { type ArmFromAbove, type ArmPoint, armFromAbove, footOf } from "./armFromAbove.ts";

/** What a length of an arm is measured from, and to. */
interface ArmLength {
  readonly from: "pivotLine" | "frontBolt" | "rearBolt";
  readonly to: ArmPoint | "rearBolt";
}

const lengths = {
  pivotToStop: { from: "pivotLine", to: "Stop" },
  pivotToOuter: { from: "pivotLine", to: "Outer" },
  pivotToMount: { from: "pivotLine", to: "Mount" },
  limitDistance: { from: "pivotLine", to: "Stop" },
  boltSpacing: { from: "frontBolt", to: "rearBolt" },
  frontBoltToStop: { from: "frontBolt", to: "Stop" },
  rearBoltToStop: { from: "rearBolt", to: "Stop" },
  frontBoltToMount: { from: "frontBolt", to: "Mount" },
  rearBoltToMount: { from: "rearBolt", to: "Mount" },
  frontBoltToOuter: { from: "frontBolt", to: "Outer" },
  rearBoltToOuter: { from: "rearBolt", to: "Outer" },
} as const satisfies { readonly [Name in PicturedReading]?: ArmLength };

export type AboveReading = keyof typeof lengths;

export function isFromAbove(reading: PicturedReading): reading is AboveReading {
  return Object.hasOwn(lengths, reading);
}

export function armLength(reading: AboveReading): ArmLength {
  return lengths[reading];
}

/** The arm to the numbers typed so far; where a clearance on the arm is asked for, to its distance. */
export function armOfValues(
  reading: AboveReading,
  values: DrawingValues,
  trailing: boolean,
): ArmFromAbove {
  const onArm = reading === "limitDistance";
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
export function aboveMeasurement(reading: AboveReading, arm: ArmFromAbove): Measurement {
  const { from, to } = armLength(reading);
  const inboard = { x: -arm.square.x, y: -arm.square.y };
  if (to === "rearBolt") {
    return { ...lengthBetween(arm.frontBolt, arm.rearBolt, arm.along, inboard), offset: 40 };
  }
  const start = from === "pivotLine" ? footOf(arm, to) : arm[from];
  const end = arm.points[to];
  return {
    ...lengthBetween(start, end, unit(start, end), arm.along),
    offset: 0,
    numberBeside: true,
  };
}

function unit(from: Point, to: Point): Point {
  const length = Math.max(distance(from, to), 1e-6);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
