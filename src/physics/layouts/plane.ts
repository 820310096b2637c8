/**
 * A point or a direction in the plane that the wheel moves in, mm: x outboard, y up. Of an arm that
 * carries its wheel, seen from beside the vehicle, x points along the arm. The arm's pivot is the
 * origin; of a beam axle, the middle of its tube at ride.
 */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

export const origin: PlanePoint = { x: 0, y: 0 };

export function along(from: PlanePoint, direction: PlanePoint, distance: number): PlanePoint {
  return { x: from.x + direction.x * distance, y: from.y + direction.y * distance };
}

/** Turned about a center by an angle, rad, the outer end up. */
export function turnedBy(point: PlanePoint, angle: number, center = origin): PlanePoint {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [point.x - center.x, point.y - center.y];
  return { x: center.x + x * cos - y * sin, y: center.y + y * cos + x * sin };
}

export function across({ x, y }: PlanePoint): PlanePoint {
  return { x: y, y: -x };
}

/** A unit direction up, its top inboard by an angle, rad. */
export function leaning(angle: number): PlanePoint {
  return { x: -Math.sin(angle), y: Math.cos(angle) };
}

/** The end of an arm of a length, mm, on a line below the horizontal, rad, from its pivot. */
export function armEnd(length: number, angle: number): PlanePoint {
  return { x: length * Math.cos(angle), y: -length * Math.sin(angle) };
}
