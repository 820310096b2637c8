import type { Side } from "../../physics/fitment.ts";
import type { LimitPlace } from "../../physics/readings/index.ts";
import { ownReadings } from "../layouts/ownReadings.ts";
import type { Skeleton } from "../layouts/skeleton.ts";
import { add, distance, tyreRadius } from "../shapes/geometry.ts";
import {
  heightOver,
  inboard,
  lengthBetween,
  lineAngle,
  type Measurement,
  minus,
  outboard,
  up,
} from "../shapes/measurement.ts";
import type { DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";

export function measurementOf(
  reading: PicturedReading,
  numbers: DrawnNumbers,
  skeleton: Skeleton,
  side: Side,
  at: LimitPlace = "wheel",
): Measurement {
  const { pivot, outer, foot, pad, stopFace, stopTop, axis, head, wheelCentre } = skeleton;
  const own = ownReadings(skeleton.kind)[reading]?.measure;
  if (own !== undefined) return own({ skeleton, numbers, side });
  const groundY = wheelCentre.y - skeleton.wheelRadius;
  if (at === "stop" && reading.startsWith("limit:")) {
    return { ...lengthBetween(pad, add(pad, axis, numbers[reading]), axis, outboard), offset: 52 };
  }
  switch (reading) {
    case "armAngle":
      return lineAngle(pivot, numbers.armAngle, distance(pivot, outer));
    case "stopLineAngle":
      return lineAngle(pivot, numbers.stopLineAngle, distance(pivot, pad));
    case "mountLineAngle":
      return lineAngle(pivot, numbers.mountLineAngle, distance(pivot, foot));
    case "stopLean":
      return {
        kind: "angle",
        vertex: foot,
        reference: 90,
        line: 90 + numbers.stopLean,
        positive: 1,
        reach: Math.max(distance(foot, head) * 1.15, 120),
      };
    case "damperLength":
      return { ...lengthBetween(foot, head, axis, inboard), offset: 58 };
    case "pressedHeight":
    case "seatToPad":
      return {
        ...lengthBetween(stopTop, pad, skeleton.stopOnArm ? axis : minus(axis), outboard),
        offset: 60,
      };
    case "pivotHeight":
      return heightOver(groundY, pivot);
    case "outerHeight":
      return heightOver(groundY, outer);
    case "stopHeight":
    case "mountHeight":
      return heightOver(groundY, foot);
    case "gap":
      return {
        ...lengthBetween(stopFace, pad, skeleton.stopOnArm ? axis : minus(axis), outboard),
        offset: 52,
      };
    case "rideHeight":
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers.rideHeight }, up, outboard),
        offset: 0,
      };
    case "cornerMass":
      return { kind: "mass", at: { x: 0, y: 0 } };
    case "freeHeight":
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers.freeHeight }, up, outboard),
        offset: 118,
      };
    case "usableCompression": {
      const pressed = numbers.freeHeight - numbers.usableCompression;
      const x = 0.75 * numbers.freeHeight;
      return {
        ...lengthBetween({ x, y: pressed }, { x, y: numbers.freeHeight }, up, outboard),
        offset: 66,
      };
    }
    case "limit:tyre": {
      const top = { x: wheelCentre.x, y: wheelCentre.y + tyreRadius };
      return { ...lengthBetween(top, add(top, up, numbers[reading]), up, outboard), offset: 28 };
    }
    case "limit:spring":
      return {
        ...lengthBetween(
          { x: springPlace, y: springSolid },
          { x: springPlace, y: springSolid + numbers[reading] },
          up,
          outboard,
        ),
        offset: 44,
      };
    default:
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers[reading] }, up, outboard),
        offset: 64,
      };
  }
}

/** The drawing of a spring: half the distance between its two pictures, and its height coil on coil, mm. */
export const springPlace = 70;
export const springSolid = 98;
