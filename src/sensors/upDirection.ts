import { standardGravity } from "../physics/standardGravity.ts";

/**
 * The direction straight up, against gravity, as a unit vector in the phone's own axes: x to the right
 * of the screen held upright, y to its top, z out of the screen (W3C Device Orientation and Motion).
 */
export interface Up {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Up from the angles of a deviceorientation event, in degrees; beta −180…180, gamma −90…90.
 * The event's rotation is R = Rz(α)·Rx(β)·Ry(γ), intrinsic Z-X′-Y″, from the phone's axes to the
 * earth's; up is its third row, in which α has no part. At γ = ±90° (the phone on its long edge)
 * β and α are told apart no longer, but the vector stays right.
 * Null where an angle is absent or no number. Source: W3C Device Orientation and Motion, 3.1.
 */
export function upFromOrientation(beta: number | null, gamma: number | null): Up | null {
  if (!isNumber(beta) || !isNumber(gamma)) return null;
  const [b, g] = [radians(beta), radians(gamma)];
  return { x: -Math.cos(b) * Math.sin(g), y: Math.sin(b), z: Math.cos(b) * Math.cos(g) };
}

/** The least and greatest acceleration, m/s², that is taken for gravity alone (common practice). */
const gravityAlone = [standardGravity - 1, standardGravity + 1] as const;

/**
 * Up from accelerationIncludingGravity, m/s². A phone at rest face up reads about +9.8 along z
 * (W3C Device Orientation and Motion, 4.1), so the vector points up. Null where a component is
 * absent, or where the length is not that of gravity: then the phone is being moved.
 */
export function upFromAcceleration(
  x: number | null,
  y: number | null,
  z: number | null,
): Up | null {
  if (!isNumber(x) || !isNumber(y) || !isNumber(z)) return null;
  const length = Math.hypot(x, y, z);
  if (!(length >= gravityAlone[0] && length <= gravityAlone[1])) return null;
  return { x: x / length, y: y / length, z: z / length };
}

function isNumber(value: number | null | undefined): value is number {
  return typeof value === "number" && Number.isFinite(value);
}

export function dot(a: Up, b: Up): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function opposite({ x, y, z }: Up): Up {
  return { x: -x, y: -y, z: -z };
}

/** The angle between two directions, degrees, 0…180. */
export function degreesBetween(a: Up, b: Up): number {
  const across = Math.hypot(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
  return (Math.atan2(across, dot(a, b)) * 180) / Math.PI;
}

/** The mean direction of some; null where there are none, or where they cancel out. */
export function meanUp(ups: readonly Up[]): Up | null {
  let [x, y, z] = [0, 0, 0];
  for (const up of ups) {
    x += up.x;
    y += up.y;
    z += up.z;
  }
  const length = Math.hypot(x, y, z);
  return length > 1e-9 * Math.max(1, ups.length)
    ? { x: x / length, y: y / length, z: z / length }
    : null;
}
