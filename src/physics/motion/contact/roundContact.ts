import { leastCosine, type MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { StopContact } from "./stopContact.ts";

export const roundFormulas = {
  turn: "α = w − asin(sin w − s/a)",
  closing: "s = a·[sin w − sin(w − α)]",
} as const;

/**
 * A round contact: the stop meets one and the same point of the arm, or the arm one of the stop.
 *
 * With a from the pivot line to the contact, φ0 that line's angle, β the lean of the stop's axis and
 * w = φ0 + β, the point moves along the axis by s = a·[sin w − sin(w − α)]: the projection of a circle.
 * Inverse α = w − asin(sin w − s/a) on the branch |w − α| < 90°, here without the arcsine.
 * Fault `leverLost` where |w| ≥ 89.95°: the axis points along the arm.
 */
export class RoundContact extends StopContact {
  readonly #length: MeasuredLength;
  readonly #line: MeasuredAngle;
  readonly #lean: MeasuredAngle;
  #arm = 0;
  #sin = 0;
  #cos = 1;

  constructor(length: MeasuredLength, line: MeasuredAngle, lean: MeasuredAngle) {
    super();
    this.#length = length;
    this.#line = line;
    this.#lean = lean;
  }

  set(): MotionFault | null {
    const line = this.#line;
    const lean = this.#lean;
    this.#arm = this.#length.value;
    this.#sin = line.sin * lean.cos + line.cos * lean.sin;
    this.#cos = line.cos * lean.cos - line.sin * lean.sin;
    return this.#cos > leastCosine ? null : "leverLost";
  }

  /** w as set, rad. */
  get line(): number {
    return Math.atan2(this.#sin, this.#cos);
  }

  turnFor(s: number, turn: Turn): boolean {
    const sin = this.#sin - s / this.#arm;
    const cos = Math.sqrt(1 - sin * sin);
    turn.cos = this.#cos * cos + this.#sin * sin;
    turn.sin = this.#sin * cos - this.#cos * sin;
    return cos >= leastCosine;
  }

  close(turn: Turn): boolean {
    const sin = this.#sin * turn.cos - this.#cos * turn.sin;
    this.closing = this.#arm * (this.#sin - sin);
    return this.#cos * turn.cos + this.#sin * turn.sin >= leastCosine;
  }

  follow(turn: Turn): boolean {
    const sin = this.#sin * turn.cos - this.#cos * turn.sin;
    const cos = this.#cos * turn.cos + this.#sin * turn.sin;
    this.closing = this.#arm * (this.#sin - sin);
    this.slope = this.#arm * cos;
    this.curve = this.#arm * sin;
    return cos >= leastCosine;
  }
}
