import type { Side } from "../../physics/fitment.ts";
import type { Point } from "./geometry.ts";

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
      /** How far to either side of the reference something stands that the number must not hide, mm. */
      readonly clearOf?: number;
    }
  | { readonly kind: "mass"; readonly at: Point };

export const up: Point = { x: 0, y: 1 };
export const down: Point = { x: 0, y: -1 };
export const outboard: Point = { x: 1, y: 0 };
export const inboard: Point = { x: -1, y: 0 };

export function lengthBetween(a: Point, b: Point, along: Point, away: Point) {
  return { kind: "length", a, b, along, away, offset: 40 } as const;
}

export function minus(direction: Point): Point {
  return { x: -direction.x, y: -direction.y };
}

/** Between a point of this side and the same of the other: A is always the vehicle's left. */
export function acrossFromLeft(point: Point, side: Side, away: Point) {
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

export function leanAngle(vertex: Point, degrees: number, reach: number, clearOf = 0): Measurement {
  return { kind: "angle", vertex, reference: 90, line: 90 + degrees, positive: 1, reach, clearOf };
}
