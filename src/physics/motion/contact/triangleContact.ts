import * as messages from "../../../words/compiled/physics/motion/contact.ts";
import { leastCosine, type MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { StopContact } from "./stopContact.ts";

/**
 * The upper mount stands still as the lower one turns about the pivot: a triangle, solved by the law of cosines.
 * q from pivot to top mount, γ0 between that and the arm's line, D from lower end to top mount; of a strut whose
 * axis passes the lower joint at p, L1 is the length along its axis.
 */
export const triangleFormulas = {
  top: "q = √[(a·cos φ0 − L0·sin β)² + (L0·cos β − a·sin φ0)²]",
  angle: "γ0 = acos[(q² + a² − L0²)/(2·a·q)]",
  rod: "L1 = √(L0² − p²)",
  slope: messages.dsDQSin,
  pressed: { straight: "D = L0 − s", aside: "D = √[(L1 − s)² + p²]" },
  turn: "α = γ0 − acos[(q² + a² − D²)/(2·a·q)]",
  turned: "D = √[q² + a² − 2·a·q·cos(γ0 − α)]",
  closing: { straight: "s = L0 − D", aside: "s = L1 − √(D² − p²)" },
} as const;

/**
 * The stop sits on a rod whose upper end is on the body and whose lower end P is carried by the arm: a damper
 * (its line runs from mount to mount) or a strut (its line passes the lower joint at a distance p).
 *
 * Pivot, lower end and top mount T form a triangle. With a = |P|, L0 = |T − P| at ride, ω the angle of the
 * arm's line plus the lean of T − P, the dot product of P and T is G0 = a² − a·L0·sin ω and their cross
 * product K0 = a·L0·cos ω at ride, and with the arm turned by α
 * G = G0·cos α + K0·sin α, K = K0·cos α − G0·sin α. The rod's length along its line is
 * q = √(|T − P|² − p²), |T − P|² = |T|² + a² − 2G, and s = q0 − q; ds/dα = K/q,
 * d²s/dα² = (K²/q² − G)/q. A length gives G by the cosine rule, K by the triangle's area in Kahan's
 * stable form (W. Kahan, "Miscalculating Area and Angles of a Needle-like Triangle", recalled).
 * Faults: `leverLost` where |ω| ≥ 89.95°; `degenerateTriangle` where T falls on the pivot (|T| below a
 * hundredth of a or L0), the three lie on one line, or the rod's line passes the joint as far as T does.
 */
export class TriangleContact extends StopContact {
  readonly #armLength: MeasuredLength;
  readonly #armLine: MeasuredAngle;
  readonly #rodLength: MeasuredLength;
  readonly #rodLean: MeasuredAngle;
  /** The lean of the stop's axis where it is not the line from lower end to top mount. */
  readonly #axisLean: MeasuredAngle | null;
  #arm = 0;
  #top = 0;
  #dot = 0;
  #cross = 0;
  /** p², mm². */
  #aside = 0;
  #rodAtRide = 0;

  constructor(
    armLength: MeasuredLength,
    armLine: MeasuredAngle,
    rodLength: MeasuredLength,
    rodLean: MeasuredAngle,
    axisLean: MeasuredAngle | null,
  ) {
    super();
    this.#armLength = armLength;
    this.#armLine = armLine;
    this.#rodLength = rodLength;
    this.#rodLean = rodLean;
    this.#axisLean = axisLean;
  }

  set(): MotionFault | null {
    const line = this.#armLine;
    const lean = this.#rodLean;
    const arm = this.#armLength.value;
    const rod = this.#rodLength.value;
    const sin = line.sin * lean.cos + line.cos * lean.sin;
    const cos = line.cos * lean.cos - line.sin * lean.sin;
    if (!(cos > leastCosine)) return "leverLost";
    const along = arm - rod * sin;
    const across = rod * cos;
    const top = Math.sqrt(along * along + across * across);
    if (!(top > 0.01 * Math.max(arm, rod))) return "degenerateTriangle";
    if (!(across > leastCosine * top)) return "degenerateTriangle";
    this.#arm = arm;
    this.#top = top;
    this.#dot = arm * along;
    this.#cross = arm * across;
    const axis = this.#axisLean;
    const share = axis === null ? 0 : axis.sin * lean.cos - axis.cos * lean.sin;
    this.#aside = (rod * share) ** 2;
    const straight = Math.sqrt(1 - share * share);
    if (!(straight > leastCosine)) return "degenerateTriangle";
    this.#rodAtRide = rod * straight;
    return null;
  }

  /** q, mm. */
  get top(): number {
    return this.#top;
  }

  /** γ0, rad. */
  get angle(): number {
    return Math.atan2(this.#cross, this.#dot);
  }

  /** L1, mm; L0 where the axis passes through the lower end. */
  get rod(): number {
    return this.#rodAtRide;
  }

  /** D of a closing, mm. */
  distanceFor(s: number): number {
    return Math.sqrt(this.#squareFor(this.#rodAtRide - s));
  }

  #squareFor(rod: number): number {
    return rod * rod + this.#aside;
  }

  turnFor(s: number, turn: Turn): boolean {
    const rod = this.#rodAtRide - s;
    const square = this.#squareFor(rod);
    const length = Math.sqrt(square);
    const arm = this.#arm;
    const top = this.#top;
    const shortest = top - arm;
    const longest = top + arm;
    const area =
      (length - shortest) * (length + shortest) * (longest - length) * (longest + length);
    const cross = Math.sqrt(area) / 2;
    const dot = (top * top + arm * arm - square) / 2;
    const product = arm * top;
    const scale = 1 / (product * product);
    turn.cos = (this.#dot * dot + this.#cross * cross) * scale;
    turn.sin = (this.#cross * dot - this.#dot * cross) * scale;
    return rod > 0 && cross >= leastCosine * product;
  }

  close(turn: Turn): boolean {
    return this.follow(turn);
  }

  follow(turn: Turn): boolean {
    const arm = this.#arm;
    const top = this.#top;
    const dot = this.#dot * turn.cos + this.#cross * turn.sin;
    const cross = this.#cross * turn.cos - this.#dot * turn.sin;
    const shortest = top - arm;
    const rod = Math.sqrt(shortest * shortest + 2 * (arm * top - dot) - this.#aside);
    const slope = cross / rod;
    this.closing = this.#rodAtRide - rod;
    this.slope = slope;
    this.curve = (slope * slope - dot) / rod;
    return rod > 0 && cross >= leastCosine * arm * top;
  }
}
