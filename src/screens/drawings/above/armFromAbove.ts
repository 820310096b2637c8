import type { ArmPoint } from "../../shapes/armLength.ts";
import { add, distance, type Point, radians } from "../../shapes/geometry.ts";

/** What an arm seen from above is drawn to, mm; undefined: not measured yet. */
export interface ArmAboveNumbers {
  readonly boltSpacing: number | undefined;
  readonly square: { readonly [To in ArmPoint]: number | undefined };
  readonly fromFrontBolt: { readonly [To in ArmPoint]: number | undefined };
  readonly fromRearBolt: { readonly [To in ArmPoint]: number | undefined };
}

/**
 * One arm as it is seen from above: mm, x outboard, y toward the front of the vehicle; the front bolt
 * is the origin. `along` is the unit direction of the pivot line from the front bolt to the rear one,
 * `square` the one across it, toward the wheel.
 */
export interface ArmFromAbove {
  readonly frontBolt: Point;
  readonly rearBolt: Point;
  readonly along: Point;
  readonly square: Point;
  readonly points: { readonly [To in ArmPoint]: Point };
}

/** A pivot line runs a little askew, so that square to it does not look like straight across. */
const skewDegrees = 9;

const usual: { readonly [To in ArmPoint]: { readonly square: number; readonly share: number } } = {
  Stop: { square: 190, share: 0.4 },
  Outer: { square: 420, share: 0.55 },
  Mount: { square: 280, share: 0.48 },
};
const usualSpacing = 330;
const leastSpacing = 60;
const mostLength = 1500;

/**
 * @param trailing the arm runs along the vehicle, its pivot line across it
 * A point is placed by its distances from both bolts where both and the bolts' spacing are known, by
 * its length square to the pivot line where that is, else where such a point usually is.
 */
export function armFromAbove(numbers: ArmAboveNumbers, trailing: boolean): ArmFromAbove {
  const spacing = held(numbers.boltSpacing, leastSpacing, usualSpacing);
  const skew = radians(skewDegrees);
  const along = trailing
    ? { x: Math.cos(skew), y: -Math.sin(skew) }
    : { x: Math.sin(skew), y: -Math.cos(skew) };
  const square = trailing ? { x: along.y, y: -along.x } : { x: -along.y, y: along.x };
  const frontBolt = { x: 0, y: 0 };
  const place = (to: ArmPoint): Point => {
    const [down, out] = placeOf(numbers, to, spacing);
    return add(add(frontBolt, along, down), square, out);
  };
  return {
    frontBolt,
    rearBolt: add(frontBolt, along, spacing),
    along,
    square,
    points: { Stop: place("Stop"), Outer: place("Outer"), Mount: place("Mount") },
  };
}

/** [along the pivot line from the front bolt, square to it], mm. */
function placeOf(
  numbers: ArmAboveNumbers,
  to: ArmPoint,
  spacing: number,
): readonly [number, number] {
  const front = known(numbers.fromFrontBolt[to]);
  const rear = known(numbers.fromRearBolt[to]);
  const measured = known(numbers.square[to]);
  const { share, square } = usual[to];
  if (front !== null && rear !== null) {
    const down = (front * front - rear * rear + spacing * spacing) / (2 * spacing);
    const squared = front * front - down * down;
    if (squared > 0) return [down, Math.sqrt(squared)];
  }
  const down = share * spacing;
  if (measured !== null) return [down, measured];
  if (front !== null && front > down) return [down, Math.sqrt(front * front - down * down)];
  return [down, square];
}

/** The foot of the length square to the pivot line: where the tape starts. */
export function footOf(arm: ArmFromAbove, to: ArmPoint): Point {
  const point = arm.points[to];
  const down =
    (point.x - arm.frontBolt.x) * arm.along.x + (point.y - arm.frontBolt.y) * arm.along.y;
  return add(arm.frontBolt, arm.along, down);
}

/** Corners of what the picture must show, mm. */
export function aboveBounds(arm: ArmFromAbove, to: ArmPoint | null): Point[] {
  const seen = to === null ? arm.points.Outer : arm.points[to];
  const beyond = 0.12 * distance(arm.frontBolt, arm.rearBolt);
  return [
    add(arm.frontBolt, arm.along, -beyond),
    add(arm.rearBolt, arm.along, beyond),
    seen,
    arm.points.Outer,
  ].flatMap((point) => [add(point, { x: -34, y: -34 }), add(point, { x: 34, y: 34 })]);
}

function known(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) && value > 0
    ? Math.min(value, mostLength)
    : null;
}

function held(value: number | undefined, least: number, otherwise: number): number {
  const number = known(value);
  return number === null ? otherwise : Math.max(number, least);
}
