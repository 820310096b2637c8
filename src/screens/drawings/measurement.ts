import type { Side } from "../../physics/fitment.ts";
import type { DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";
import { add, belowHorizontal, distance, type Point } from "./geometry.ts";
import type { Skeleton } from "./skeleton.ts";
import { tyreRadius } from "./skeleton.ts";

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

const up: Point = { x: 0, y: 1 };
const down: Point = { x: 0, y: -1 };
const outboard: Point = { x: 1, y: 0 };
const inboard: Point = { x: -1, y: 0 };

export function measurementOf(
  reading: PicturedReading,
  numbers: DrawnNumbers,
  skeleton: Skeleton,
  side: Side,
  at: "wheel" | "stop" = "wheel",
): Measurement {
  const { pivot, outer, foot, pad, stopFace, axis, head, wheelCentre } = skeleton;
  if (at === "stop" && reading.startsWith("limit:")) {
    return { ...length(pad, add(pad, axis, numbers[reading]), axis, outboard), offset: 52 };
  }
  switch (reading) {
    case "pivotToStop":
      return {
        ...length(pivot, pad, belowHorizontal(numbers.stopLineAngle), down),
        offset: 46,
      };
    case "pivotToOuter":
      return { ...length(pivot, outer, belowHorizontal(numbers.armAngle), down), offset: 46 };
    case "pivotToMount":
      return { ...length(pivot, foot, belowHorizontal(numbers.mountLineAngle), down), offset: 46 };
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
      return { ...length(foot, head, axis, inboard), offset: 58 };
    case "track":
      return { ...acrossFromLeft({ x: wheelCentre.x, y: -tyreRadius }, side, down), offset: 20 };
    case "stopSpacing":
      return { ...acrossFromLeft(stopFace, side, down), offset: 44 };
    case "gap":
      return {
        ...length(stopFace, pad, { x: -axis.x, y: -axis.y }, outboard),
        offset: 52,
      };
    case "rideHeight":
      return {
        ...length({ x: 0, y: 0 }, { x: 0, y: numbers.rideHeight }, up, outboard),
        offset: 0,
      };
    case "cornerMass":
      return { kind: "mass", at: { x: 0, y: 0 } };
    case "freeHeight":
      return {
        ...length({ x: 0, y: 0 }, { x: 0, y: numbers.freeHeight }, up, outboard),
        offset: 118,
      };
    case "usableCompression": {
      const pressed = numbers.freeHeight - numbers.usableCompression;
      const x = 0.75 * numbers.freeHeight;
      return {
        ...length({ x, y: pressed }, { x, y: numbers.freeHeight }, up, outboard),
        offset: 66,
      };
    }
    case "limit:tyre": {
      const top = { x: wheelCentre.x, y: wheelCentre.y + tyreRadius };
      return { ...length(top, add(top, up, numbers[reading]), up, outboard), offset: 28 };
    }
    case "limit:spring":
      return {
        ...length(
          { x: springPlace, y: springSolid },
          { x: springPlace, y: springSolid + numbers[reading] },
          up,
          outboard,
        ),
        offset: 44,
      };
    default:
      return { ...length({ x: 0, y: 0 }, { x: 0, y: numbers[reading] }, up, outboard), offset: 64 };
  }
}

/** The drawing of a spring: half the distance between its two pictures, and its height coil on coil, mm. */
export const springPlace = 70;
export const springSolid = 98;

function length(a: Point, b: Point, along: Point, away: Point) {
  return { kind: "length", a, b, along, away, offset: 40 } as const;
}

/** Between a point of this side and the same of the other: A is always the vehicle's left. */
function acrossFromLeft(point: Point, side: Side, away: Point) {
  const other = { x: -point.x, y: point.y };
  return side === "left"
    ? length(point, other, inboard, away)
    : length(other, point, outboard, away);
}

function lineAngle(vertex: Point, degreesBelow: number, reach: number): Measurement {
  return { kind: "angle", vertex, reference: 0, line: -degreesBelow, positive: -1, reach };
}
