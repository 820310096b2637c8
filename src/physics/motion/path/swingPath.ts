import * as messages from "../../../words/compiled/physics/motion/path.ts";
import { leastCosine, type MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import type { WheelRatio } from "../wheelRatio.ts";
import { WheelPath } from "./wheelPath.ts";

export const swingFormulas = {
  slope: messages.dzDBCos0,
  rise: "z = κ·b·[sin θ0 − sin(θ0 − α)]",
  turn: "α = θ0 − asin[sin θ0 − z/(κ·b)]",
} as const;

/**
 * The wheel rises in proportion to the outer joint: z = m·κ·zj, zj = b·[sin θ0 − sin(θ0 − α)].
 *
 * b from the pivot line to the outer joint, mm; θ0 that line's angle; κ wheel travel per travel of the outer
 * joint, 1 where the arm carries the wheel itself. Inverse on the branch |θ0 − α| < 90°.
 */
export class SwingPath extends WheelPath {
  readonly #length: MeasuredLength;
  readonly #line: MeasuredAngle;
  /** κ */
  readonly ratio: WheelRatio;
  #arm = 0;
  #sin = 0;
  #cos = 1;

  constructor(length: MeasuredLength, line: MeasuredAngle, ratio: WheelRatio) {
    super();
    this.#length = length;
    this.#line = line;
    this.ratio = ratio;
  }

  set(scale: number): MotionFault | null {
    const ratio = this.ratio.value;
    this.#arm = scale * ratio * this.#length.value;
    this.#sin = this.#line.sin;
    this.#cos = this.#line.cos;
    return ratio > 0 ? null : "wheelDoesNotRise";
  }

  rise(turn: Turn): boolean {
    const sin = this.#sin * turn.cos - this.#cos * turn.sin;
    this.travel = this.#arm * (this.#sin - sin);
    return this.#cos * turn.cos + this.#sin * turn.sin >= leastCosine;
  }

  follow(turn: Turn): boolean {
    const sin = this.#sin * turn.cos - this.#cos * turn.sin;
    const cos = this.#cos * turn.cos + this.#sin * turn.sin;
    this.travel = this.#arm * (this.#sin - sin);
    this.slope = this.#arm * cos;
    this.curve = this.#arm * sin;
    return cos >= leastCosine;
  }

  /** In proportion to its arm, the wheel tells nothing of them. */
  joined() {
    return { carrier: 0, otherArm: 0 };
  }

  turnFor(z: number, turn: Turn): boolean {
    const sin = this.#sin - z / this.#arm;
    const cos = Math.sqrt(1 - sin * sin);
    turn.cos = this.#cos * cos + this.#sin * sin;
    turn.sin = this.#sin * cos - this.#cos * sin;
    return cos >= leastCosine;
  }
}
