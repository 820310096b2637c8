import { leastCosine, type MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { StopContact } from "./stopContact.ts";

/** By which of the two the stop is on; A, B and g0 in mm. */
export const flatFormulas = {
  frame: {
    level: "A = a·sin w − s",
    across: "B = a·cos w",
    turn: "α = atan2(B, A) − acos[a·sin w/√(A² + B²)]",
    closing: "s = a·[sin(w + α) − sin w]/cos α",
  },
  arm: {
    level: "A = a·sin w + s − g0",
    across: "B = −a·cos w",
    turn: "α = atan2(B, A) + acos[(a·sin w − g0)/√(A² + B²)]",
    closing: "s = g0 + (a·[sin w − sin(w − α)] − g0)/cos α",
  },
} as const;

/**
 * A stop that meets a flat pad, where one of the two turns with the arm.
 *
 * With a, φ0, β and w as for a round contact, square to the axis at ride:
 * - stop on the frame, pad on the arm: s = a·[sin(w + α) − sin w]/cos α. The pad's plane through the contact
 *   point, n = (0, 1) turned by α, is cut by the stop's axis;
 * - stop on the arm, pad on the frame: s = g0 + (a·[sin w − sin(w − α)] − g0)/cos α, where the tip stands
 *   off the pad by g0 at ride: the axis turns with the arm and is cut by the pad's plane.
 *
 * Both are (c − σs)·cos α + σ·a·cos w·sin α = c, with c = a·sin w and σ = +1 on the frame, c = a·sin w − g0 and
 * σ = −1 on the arm. Solved for α on the branch through 0, without the inverse functions; derivatives
 * by implicit differentiation. The branch ends where ds/dα vanishes or the arm has turned by 89.95°.
 * Fault `leverLost` where |w| ≥ 89.95°.
 */
export class FlatContact extends StopContact {
  readonly #length: MeasuredLength;
  readonly #line: MeasuredAngle;
  readonly #lean: MeasuredAngle;
  /** g0 of a stop on the arm, mm; null on the frame. */
  readonly #standOff: MeasuredLength | null;
  readonly #sign: 1 | -1;
  /** a·sin w, and less g0. */
  #level = 0;
  #along = 0;
  #across = 1;
  #leastLever = 0;

  constructor(
    length: MeasuredLength,
    line: MeasuredAngle,
    lean: MeasuredAngle,
    standOff: MeasuredLength | null,
  ) {
    super();
    this.#length = length;
    this.#line = line;
    this.#lean = lean;
    this.#standOff = standOff;
    this.#sign = standOff === null ? 1 : -1;
  }

  set(): MotionFault | null {
    const line = this.#line;
    const lean = this.#lean;
    const arm = this.#length.value;
    const cos = line.cos * lean.cos - line.sin * lean.sin;
    this.#level = arm * (line.sin * lean.cos + line.cos * lean.sin);
    this.#along = this.#level - (this.#standOff?.value ?? 0);
    this.#across = arm * cos;
    this.#leastLever = arm * leastCosine;
    return cos > leastCosine ? null : "leverLost";
  }

  override standOffBy(standOff: number): void {
    if (this.#standOff !== null) this.#along = this.#level - standOff;
  }

  get stopOn(): "frame" | "arm" {
    return this.#standOff === null ? "frame" : "arm";
  }

  /** w as set, rad. */
  get line(): number {
    return Math.atan2(this.#level, this.#across);
  }

  /** B, mm. */
  get across(): number {
    return this.#sign * this.#across;
  }

  /** A of a closing, mm. */
  levelFor(s: number): number {
    return this.#along - this.#sign * s;
  }

  turnFor(s: number, turn: Turn): boolean {
    const c = this.#along;
    const across = this.#across;
    const closing = this.#sign * s;
    const a = this.levelFor(s);
    const lever = Math.sqrt(across * across + closing * (closing - 2 * c));
    const square = a * a + across * across;
    turn.cos = (a * c + across * lever) / square;
    turn.sin = (this.#sign * (across * c - a * lever)) / square;
    return lever >= this.#leastLever && turn.cos >= leastCosine;
  }

  close(turn: Turn): boolean {
    const sin = this.#sign * turn.sin;
    const c = this.#along;
    // c·(1 − 1/cos α) as −c·sin²α/(cos α·(1 + cos α)), which loses no digits near the ride height.
    const closing = (this.#across * sin - (c * sin * sin) / (1 + turn.cos)) / turn.cos;
    this.closing = this.#sign * closing;
    const lever = this.#across * turn.cos - (c - closing) * sin;
    return turn.cos >= leastCosine && lever >= this.#leastLever;
  }

  follow(turn: Turn): boolean {
    const inside = this.close(turn);
    const sin = this.#sign * turn.sin;
    const c = this.#along;
    const slope = this.#across - ((c - this.#sign * this.closing) * sin) / turn.cos;
    this.slope = slope;
    this.curve = (this.#sign * (2 * slope * sin - c)) / turn.cos;
    return inside;
  }
}
