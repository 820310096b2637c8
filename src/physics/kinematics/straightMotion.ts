import { LayoutMotion, type MotionFault, radiansPerDegree, steepest } from "./layoutMotion.ts";

/** A straight guide has no reach of its own; this bound only keeps every number finite, mm. */
const farthest = 1e6;

/** s in proportion to z: what strut and beam axle share. Subclasses say the proportion. */
abstract class StraightMotion extends LayoutMotion {
  protected stopPerWheel = 1;

  range(): readonly [number, number] {
    return [-farthest, farthest];
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    out[place] = z * this.stopPerWheel;
    return Math.abs(z) <= farthest;
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    const z = s / this.stopPerWheel;
    out[place] = z;
    return Math.abs(z) <= farthest;
  }

  evaluate(z: number, out: Float64Array): void {
    out[0] = z * this.stopPerWheel;
    out[1] = this.stopPerWheel;
    out[2] = 0;
  }
}

/**
 * Strut: s = z·cos β. Wheel and outer joint are one, so κ does not enter.
 * Error: `stopLeansFlat` where |β| ≥ 89.95°.
 */
export class StrutMotion extends StraightMotion {
  set(readings: Float64Array, from = 0): MotionFault | null {
    const lean = (readings[from] as number) * radiansPerDegree;
    if (!(Math.abs(lean) < steepest)) return "stopLeansFlat";
    this.stopPerWheel = Math.cos(lean);
    return null;
  }
}

/** Which wheels of a beam axle rise. */
export type AxleMovement = "both" | "one";

/**
 * Beam axle: both wheels up together s = z·cos β; one wheel up with the other on
 * the ground s = z·cos β·(T + S)/(2T), since the axle then turns about the other wheel's contact and a
 * stop stands (T + S)/2 away from it. Track T and stop spacing S in mm. κ does not enter.
 * Error: `stopLeansFlat` where |β| ≥ 89.95°.
 */
export class AxleMotion extends StraightMotion {
  readonly #movement: AxleMovement;

  constructor(movement: AxleMovement) {
    super();
    this.#movement = movement;
  }

  set(readings: Float64Array, from = 0): MotionFault | null {
    const track = readings[from] as number;
    const spacing = readings[from + 1] as number;
    const lean = (readings[from + 2] as number) * radiansPerDegree;
    if (!(Math.abs(lean) < steepest)) return "stopLeansFlat";
    const share = this.#movement === "both" ? 1 : (track + spacing) / (2 * track);
    this.stopPerWheel = Math.cos(lean) * share;
    return null;
  }
}
