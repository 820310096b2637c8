/** Steepest angle that a line may take against the square position before its lever is lost, rad. */
const steepest = (89.95 * Math.PI) / 180;

/** Cosine at `steepest`, a hair smaller so that the ends of the range themselves are inside. */
export const leastCosine = Math.cos(steepest) * 0.999;

export const radiansPerDegree = Math.PI / 180;

/** cos of an angle whose sine is known, by one square root where that loses nothing. */
export function cosineOf(angle: number, sine: number): number {
  return Math.abs(angle) < 1 ? Math.sqrt(1 - sine * sine) : Math.cos(angle);
}

/** Why a set of readings gives no motion. */
export type MotionFault =
  | "lengthLost"
  | "boltsApart"
  | "heightsApart"
  | "angleTooSteep"
  | "leverLost"
  | "degenerateTriangle"
  | "jointsTooClose"
  | "linkageStretched"
  | "wheelDoesNotRise";

/** Turns since the ride height, rad, outer end up: of the measured arm, the wheel carrier and the other arm. */
export interface Standing {
  readonly arm: number;
  /** Turn of the arm per mm of wheel travel there, rad/mm. */
  readonly armPerMm: number;
  readonly carrier: number;
  readonly otherArm: number;
}

/**
 * One layout's kinematics for one set of readings, in a form for inner loops: nothing is allocated,
 * and results go into the caller's array. Wheel travel z and stop closing s in mm, zero at the measured
 * ride height, positive in jounce and as the gap closes. `kinematics.ts` turns what cannot be reached
 * into an outcome, and the draws count it.
 */
export abstract class LayoutMotion {
  readonly #result = new Float64Array(1);

  /**
   * Takes readings in the order of the plan's places (mm, degrees) that stand in the array from `from`
   * on. Null, or why they give no motion; the other members may then not be called.
   */
  abstract set(readings: Float64Array, from?: number): MotionFault | null;
  /**
   * Has a stop on the arm stand off its pad by another distance at ride, mm, all else as set: the other side
   * of the same geometry. Nothing changes elsewhere.
   */
  standOffBy(_standOff: number): void {}
  /** Has what is found by search be looked for from the ride height, as after `set`, whatever was asked before. */
  fromRide(): void {}
  /** Wheel travel that the layout can reach, mm: on it s rises strictly with z. */
  abstract range(): readonly [number, number];
  /** Puts s(z), mm, at a place of `out`; false, and no number there, where z cannot be reached. */
  abstract closingInto(out: Float64Array, place: number, z: number): boolean;
  /** Puts z(s), mm, at a place of `out`; false, and no number there, where s cannot be reached. */
  abstract wheelTravelInto(out: Float64Array, place: number, s: number): boolean;
  /** Fills [s, ds/dz, d²s/dz²] in mm, 1, 1/mm for a z within the range. */
  abstract evaluate(z: number, out: Float64Array): void;
  /**
   * Puts at a place of `out` the wheel travel, mm, at which a point on the arm's own line, `distance` mm from
   * the pivot line, has risen by `clearance` mm; false where it cannot, and for layouts without an arm.
   */
  abstract armPointTravelInto(
    out: Float64Array,
    place: number,
    distance: number,
    clearance: number,
  ): boolean;

  /** How the parts of a turning layout stand once the wheel has risen by z; null out of reach, or without an arm. */
  abstract standAt(z: number): Standing | null;

  /** s(z), mm; NaN where z cannot be reached. */
  closing(z: number): number {
    return this.closingInto(this.#result, 0, z) ? this.#result[0] : Number.NaN;
  }

  /** z(s), mm; NaN where s cannot be reached. */
  wheelTravel(s: number): number {
    return this.wheelTravelInto(this.#result, 0, s) ? this.#result[0] : Number.NaN;
  }

  /** Wheel travel as `armPointTravelInto` finds it, mm; NaN where the point cannot rise so far. */
  armPointTravel(distance: number, clearance: number): number {
    return this.armPointTravelInto(this.#result, 0, distance, clearance)
      ? this.#result[0]
      : Number.NaN;
  }
}
