/** Steepest angle that a line may take against the square position before its lever is lost, rad. */
export const steepest = (89.95 * Math.PI) / 180;

/** Cosine at `steepest`, a hair smaller so that the ends of the range themselves are inside. */
export const leastCosine = Math.cos(steepest) * 0.999;

export const radiansPerDegree = Math.PI / 180;

/** cos of an angle whose sine is known, by one square root where that loses nothing. */
export function cosineOf(angle: number, sine: number): number {
  return Math.abs(angle) < 1 ? Math.sqrt(1 - sine * sine) : Math.cos(angle);
}

/** Why a set of readings gives no motion. */
export type MotionFault = "armTooSteep" | "leverLost" | "degenerateTriangle" | "stopLeansFlat";

/**
 * One layout's kinematics for one set of readings, in a form for inner loops: nothing is allocated,
 * and what cannot be reached is NaN, which never leaves the physics: `kinematics.ts` turns it into an
 * outcome, and the draws count it. Wheel travel z and stop closing s in mm, zero at the measured ride
 * height, positive in jounce and as the gap closes.
 */
export interface LayoutMotion {
  /**
   * Takes readings in the order of `geometryPlaces` (mm, degrees), with lengths finite and above 0.
   * Null, or why they give no motion; the other members may then not be called.
   */
  set(readings: Float64Array): MotionFault | null;
  /** Wheel travel that the layout can reach, mm: on it s rises strictly with z. */
  range(): readonly [number, number];
  /** s(z), mm; NaN where z cannot be reached. */
  closing(z: number): number;
  /** z(s), mm; NaN where s cannot be reached. */
  wheelTravel(s: number): number;
  /** Fills [s, ds/dz, d²s/dz²] in mm, 1, 1/mm for a z within the range. */
  evaluate(z: number, out: Float64Array): void;
}
