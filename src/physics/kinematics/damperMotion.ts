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
 * The stop sits on the rod of a damper whose lower mount is on the arm (plane geometry).
 *
 * Pivot, lower mount and upper mount form a triangle with sides a (pivot to lower mount), q (pivot to
 * upper mount, fixed) and the damper's length L; γ is its angle at the pivot and falls by α as the arm
 * swings up. So L² = q² + a² − 2aq·cos γ, and a length gives γ in closed form by the cosine rule, with
 * sin γ from the area of the triangle in Kahan's stable form (W. Kahan, "Miscalculating Area and
 * Angles of a Needle-like Triangle", recalled). At ride q² = a² + L0² − 2aL0·sin(φ0+β),
 * cos γ0 = (a − L0·sin(φ0+β))/q, sin γ0 = L0·cos(φ0+β)/q. z(α) as for the arm. The branch is
 * 0 < γ < 180° and |θ0 − α| < 90°, on which s and z rise together.
 *
 * Errors: `armTooSteep` where |θ0| ≥ 89.95°; `leverLost` where |φ0+β| ≥ 89.95° (the damper points at
 * the pivot, or lengthens as the wheel rises); `degenerateTriangle` where the upper mount falls on
 * the pivot (q below a hundredth of a or L0) or the three points lie on one line.
 */
export class DamperMotion extends LayoutMotion {
  readonly #wheelPerOuter: number;
  #mountArm = 0;
  #wheelArm = 0;
  #lengthAtRide = 0;
  #upperArm = 0;
  #outerAngle = 0;
  #alongAtRide = 0;
  #acrossAtRide = 0;
  #sinOuter = 0;
  #sinOffset = 0;
  #cosOffset = 1;

  /** @param wheelPerOuter κ, wheel travel per travel of the outer joint, above 0 */
  constructor(wheelPerOuter: number) {
    super();
    this.#wheelPerOuter = wheelPerOuter;
  }

  set(readings: Float64Array, from = 0): MotionFault | null {
    const mountArm = readings[from] as number;
    const lengthAtRide = readings[from + 5] as number;
    const outerAngle = (readings[from + 2] as number) * radiansPerDegree;
    const mountAngle =
      ((readings[from + 3] as number) + (readings[from + 4] as number)) * radiansPerDegree;
    if (!(Math.abs(outerAngle) < steepest)) return "armTooSteep";
    if (!(Math.abs(mountAngle) < steepest)) return "leverLost";
    const sinMount = sine(mountAngle);
    const along = mountArm - lengthAtRide * sinMount;
    const across = lengthAtRide * cosineOf(mountAngle, sinMount);
    const upperArm = Math.sqrt(along * along + across * across);
    if (!(upperArm > 0.01 * Math.max(mountArm, lengthAtRide))) return "degenerateTriangle";
    const cosTriangle = along / upperArm;
    const sinTriangle = across / upperArm;
    if (!(sinTriangle > leastCosine)) return "degenerateTriangle";
    const sinOuter = sine(outerAngle);
    const cosOuter = cosineOf(outerAngle, sinOuter);
    this.#mountArm = mountArm;
    this.#wheelArm = this.#wheelPerOuter * (readings[from + 1] as number);
    this.#lengthAtRide = lengthAtRide;
    this.#upperArm = upperArm;
    this.#outerAngle = outerAngle;
    this.#acrossAtRide = across;
    this.#alongAtRide = along;
    this.#sinOuter = sinOuter;
    this.#sinOffset = sinOuter * cosTriangle - cosOuter * sinTriangle;
    this.#cosOffset = cosOuter * cosTriangle + sinOuter * sinTriangle;
    return null;
  }

  range(): readonly [number, number] {
    const margin = Math.PI / 2 - steepest;
    const triangleAngle = Math.atan2(this.#acrossAtRide, this.#alongAtRide);
    const most = Math.min(this.#outerAngle + steepest, triangleAngle - margin);
    const least = Math.max(this.#outerAngle - steepest, triangleAngle - Math.PI + margin);
    const travel = (rotation: number) =>
      this.#wheelArm * (this.#sinOuter - Math.sin(this.#outerAngle - rotation));
    return [travel(least), travel(most)];
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    const sinOuter = this.#sinOuter - z / this.#wheelArm;
    const cosOuter = Math.sqrt(1 - sinOuter * sinOuter);
    const cosTriangle = sinOuter * this.#sinOffset + cosOuter * this.#cosOffset;
    const sinTriangle = sinOuter * this.#cosOffset - cosOuter * this.#sinOffset;
    out[place] = this.#lengthAtRide - this.#damperLength(cosTriangle);
    return cosOuter >= leastCosine && sinTriangle >= leastCosine;
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    const length = this.#lengthAtRide - s;
    const upper = this.#upperArm;
    const mount = this.#mountArm;
    const shortest = upper - mount;
    const longest = upper + mount;
    const area =
      (length - shortest) * (length + shortest) * (longest - length) * (longest + length);
    const sinTriangle = Math.sqrt(area) / (2 * mount * upper);
    const cosTriangle = (upper * upper + (mount - length) * (mount + length)) / (2 * mount * upper);
    const sinOuter = this.#sinOffset * cosTriangle + this.#cosOffset * sinTriangle;
    const cosOuter = this.#cosOffset * cosTriangle - this.#sinOffset * sinTriangle;
    out[place] = this.#wheelArm * (this.#sinOuter - sinOuter);
    return length > 0 && cosOuter >= leastCosine && sinTriangle >= leastCosine;
  }

  evaluate(z: number, out: Float64Array): void {
    const sinOuter = this.#sinOuter - z / this.#wheelArm;
    const cosOuter = Math.sqrt(1 - sinOuter * sinOuter);
    const cosTriangle = sinOuter * this.#sinOffset + cosOuter * this.#cosOffset;
    const sinTriangle = sinOuter * this.#cosOffset - cosOuter * this.#sinOffset;
    const length = this.#damperLength(cosTriangle);
    const product = this.#mountArm * this.#upperArm;
    const closingPerAngle = (product * sinTriangle) / length;
    const closingCurve = (closingPerAngle * closingPerAngle - product * cosTriangle) / length;
    const wheelPerAngle = this.#wheelArm * cosOuter;
    const slope = closingPerAngle / wheelPerAngle;
    out[0] = this.#lengthAtRide - length;
    out[1] = slope;
    out[2] = (closingCurve - slope * this.#wheelArm * sinOuter) / (wheelPerAngle * wheelPerAngle);
  }

  /** The damper's length for a triangle angle, mm, by the cosine rule without cancellation. */
  #damperLength(cosTriangle: number): number {
    const difference = this.#upperArm - this.#mountArm;
    return Math.sqrt(
      difference * difference + 2 * this.#mountArm * this.#upperArm * (1 - cosTriangle),
    );
  }
}
