import {
  cosineOf,
  LayoutMotion,
  leastCosine,
  type MotionFault,
  radiansPerDegree,
  steepest,
} from "./layoutMotion.ts";
import { sine } from "./sine.ts";

/**
 * The stop acts on an arm that swings about a fixed axis (plane geometry in the plane square to that axis).
 *
 * With ψ = θ0 − α the outer line's angle below the horizontal after a rotation α (outer end up
 * positive) and ω = φ0 + β − α the stop line's angle against the square of the stop's axis:
 * s = a·[sin(φ0+β) − sin ω], z = κ·b·[sin θ0 − sin ψ], and ω = ψ + (φ0+β−θ0). Both are inverted by
 * asin on the branch |ψ|, |ω| < 90°, on which s and z rise together; sin and cos of the sum are
 * written out, so that an inversion costs one square root and no inverse sine.
 *
 * Errors: `armTooSteep` where |θ0| ≥ 89.95°, `leverLost` where |φ0+β| ≥ 89.95°; unreachable where an
 * argument of asin passes ±1 or a line passes 89.95°.
 */
export class ArmMotion extends LayoutMotion {
  readonly #wheelPerOuter: number;
  #stopArm = 0;
  #wheelArm = 0;
  #outerAngle = 0;
  #stopAngle = 0;
  #sinOuter = 0;
  #sinStop = 0;
  #sinOffset = 0;
  #cosOffset = 1;

  /** @param wheelPerOuter κ, wheel travel per travel of the outer joint, above 0 */
  constructor(wheelPerOuter: number) {
    super();
    this.#wheelPerOuter = wheelPerOuter;
  }

  set(readings: Float64Array, from = 0): MotionFault | null {
    const outerAngle = (readings[from + 2] as number) * radiansPerDegree;
    const stopAngle =
      ((readings[from + 3] as number) + (readings[from + 4] as number)) * radiansPerDegree;
    if (!(Math.abs(outerAngle) < steepest)) return "armTooSteep";
    if (!(Math.abs(stopAngle) < steepest)) return "leverLost";
    this.#stopArm = readings[from] as number;
    this.#wheelArm = this.#wheelPerOuter * (readings[from + 1] as number);
    this.#outerAngle = outerAngle;
    this.#stopAngle = stopAngle;
    this.#sinOuter = sine(outerAngle);
    this.#sinStop = sine(stopAngle);
    const offset = stopAngle - outerAngle;
    this.#sinOffset = sine(offset);
    this.#cosOffset = cosineOf(offset, this.#sinOffset);
    return null;
  }

  range(): readonly [number, number] {
    const most = Math.min(this.#outerAngle, this.#stopAngle) + steepest;
    const least = Math.max(this.#outerAngle, this.#stopAngle) - steepest;
    const travel = (rotation: number) =>
      this.#wheelArm * (this.#sinOuter - Math.sin(this.#outerAngle - rotation));
    return [travel(least), travel(most)];
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    const sinOuter = this.#sinOuter - z / this.#wheelArm;
    const cosOuter = Math.sqrt(1 - sinOuter * sinOuter);
    const cosStop = cosOuter * this.#cosOffset - sinOuter * this.#sinOffset;
    const sinStop = sinOuter * this.#cosOffset + cosOuter * this.#sinOffset;
    out[place] = this.#stopArm * (this.#sinStop - sinStop);
    return cosOuter >= leastCosine && cosStop >= leastCosine;
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    const sinStop = this.#sinStop - s / this.#stopArm;
    const cosStop = Math.sqrt(1 - sinStop * sinStop);
    const cosOuter = cosStop * this.#cosOffset + sinStop * this.#sinOffset;
    const sinOuter = sinStop * this.#cosOffset - cosStop * this.#sinOffset;
    out[place] = this.#wheelArm * (this.#sinOuter - sinOuter);
    return cosOuter >= leastCosine && cosStop >= leastCosine;
  }

  evaluate(z: number, out: Float64Array): void {
    const sinOuter = this.#sinOuter - z / this.#wheelArm;
    const cosOuter = Math.sqrt(1 - sinOuter * sinOuter);
    const cosStop = cosOuter * this.#cosOffset - sinOuter * this.#sinOffset;
    const sinStop = sinOuter * this.#cosOffset + cosOuter * this.#sinOffset;
    const wheelPerAngle = this.#wheelArm * cosOuter;
    const slope = (this.#stopArm * cosStop) / wheelPerAngle;
    out[0] = this.#stopArm * (this.#sinStop - sinStop);
    out[1] = slope;
    out[2] =
      (this.#stopArm * sinStop - slope * this.#wheelArm * sinOuter) /
      (wheelPerAngle * wheelPerAngle);
  }
}
