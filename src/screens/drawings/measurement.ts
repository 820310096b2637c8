import type { Side } from "../../physics/fitment.ts";
import type { LimitPlace } from "../../physics/readings/index.ts";
import type { Skeleton } from "../layouts/skeleton.ts";
import { add, distance, type Point, tyreRadius } from "../shapes/geometry.ts";
import type { DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";

/** What the drawing marks; points in the scene's mm, directions with y up. */
export type Measurement =
  | {
      readonly kind: "length";
      readonly a: Point;
      readonly b: Point;
      /** Unit direction from a to b, told apart because they may coincide. */
      readonly along: Point;
      /** The side on which the dimension line runs. */
      readonly away: Point;
      /** How far beside a and b it runs, px. */
      readonly offset: number;
      /** The number stands beside the line, so that it hides nothing under the tape. */
      readonly numberBeside?: boolean;
    }
  | {
      readonly kind: "angle";
      readonly vertex: Point;
      /** Directions counterclockwise from outboard, deg: the reference, the line, and the way of plus. */
      readonly reference: number;
      readonly line: number;
      readonly positive: 1 | -1;
      /** How far the line goes, mm. */
      readonly reach: number;
    }
  | { readonly kind: "mass"; readonly at: Point };

export const up: Point = { x: 0, y: 1 };
const down: Point = { x: 0, y: -1 };
const outboard: Point = { x: 1, y: 0 };
export const inboard: Point = { x: -1, y: 0 };

export function measurementOf(
  reading: PicturedReading,
  numbers: DrawnNumbers,
  skeleton: Skeleton,
  side: Side,
  at: LimitPlace = "wheel",
): Measurement {
  const { pivot, outer, foot, pad, stopFace, stopTop, axis, head, wheelCentre } = skeleton;
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
    case "track":
      return { ...acrossFromLeft({ x: wheelCentre.x, y: -tyreRadius }, side, down), offset: 20 };
    case "stopSpacing":
      return { ...acrossFromLeft(stopFace, side, down), offset: 44 };
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

export function lengthBetween(a: Point, b: Point, along: Point, away: Point) {
  return { kind: "length", a, b, along, away, offset: 40 } as const;
}

function minus(direction: Point): Point {
  return { x: -direction.x, y: -direction.y };
}

/** Between a point of this side and the same of the other: A is always the vehicle's left. */
function acrossFromLeft(point: Point, side: Side, away: Point) {
  const other = { x: -point.x, y: point.y };
  return side === "left"
    ? lengthBetween(point, other, inboard, away)
    : lengthBetween(other, point, outboard, away);
}

/** Straight up from the ground to a point, beside the point itself. */
export function heightOver(groundY: number, point: Point): Measurement {
  return { ...lengthBetween({ x: point.x, y: groundY }, point, up, inboard), offset: 0 };
}

export function lineAngle(vertex: Point, degreesBelow: number, reach: number): Measurement {
  return { kind: "angle", vertex, reference: 0, line: -degreesBelow, positive: -1, reach };
}
