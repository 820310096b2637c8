import * as messages from "../../words/compiled/physics/motion.ts";
import { isFactor } from "./drawnFactor.ts";
import type { MotionFault } from "./layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "./measuredQuantity.ts";

/** Height left between the two arms' lines at the joints, below which they are no two arms, mm. */
export const leastJointHeight = 50;

/** κ, wheel travel per travel of the outer joint: as drawn where it was typed from a pack or is of the arm's kind. */
export interface WheelRatio {
  readonly value: number;
  set(readings: Float64Array, from: number): MotionFault | null;
}

/** The arm carries the wheel itself. */
export const wheelOnArm: WheelRatio = { value: 1, set: () => null };

/** Where the joints of two arms and the tire stand to each other, front view. Lengths mm. */
export interface JointPlaces {
  /** h, the upper joint above the lower. */
  readonly height: MeasuredLength;
  /** k, the upper joint inboard of the lower. */
  readonly inset: MeasuredLength;
  /** e, the lower joint out to the tire's middle plane. */
  readonly tyreOffset: MeasuredLength;
}

export const instantCentreFormulas = {
  turn: messages.tanLTanU,
  ratio: "κ = 1 + e·τ",
} as const;

/** τ, turn of the wheel carrier per rise of the lower joint at ride, 1/mm. */
export function carrierTurn(
  { height, inset }: JointPlaces,
  lower: MeasuredAngle,
  upper: MeasuredAngle,
): number {
  const slope = upper.sin / upper.cos;
  return turnBetween(lower.sin / lower.cos, slope, height.value - inset.value * slope);
}

/** The same from the tangents of both arms and h − k·tan θu. */
function turnBetween(lower: number, upper: number, between: number): number {
  return (lower - upper) / between;
}

/**
 * κ = 1 + e·τ, τ = (tan θl − tan θu)/(h − k·tan θu): the wheel carrier turns about the point in which both
 * arms' lines meet. With the lower joint at (0, 0) and rising by 1, and the carrier turning by τ a unit of it,
 * the joints move square to their arms: the lower by (tan θl, 1), the upper by
 * (tan θl − τh, 1 − τk), which must be square to the upper arm; the tire's middle rises by 1 + e·τ.
 * Valid at ride, and near it as long as κ changes little. Fault `jointsTooClose` where
 * h − k·tan θu < 50 mm.
 */
export class InstantCentreRatio implements WheelRatio {
  value = 1;
  readonly #joints: JointPlaces;
  readonly #lower: MeasuredAngle;
  readonly #upper: MeasuredAngle;

  constructor(joints: JointPlaces, lower: MeasuredAngle, upper: MeasuredAngle) {
    this.#joints = joints;
    this.#lower = lower;
    this.#upper = upper;
  }

  /** τ as set. */
  get turn(): number {
    return carrierTurn(this.#joints, this.#lower, this.#upper);
  }

  set(): MotionFault | null {
    const { height, inset, tyreOffset } = this.#joints;
    const lower = this.#lower.sin / this.#lower.cos;
    const upper = this.#upper.sin / this.#upper.cos;
    const between = height.value - inset.value * upper;
    if (!(between >= leastJointHeight)) return "jointsTooClose";
    this.value = 1 + tyreOffset.value * turnBetween(lower, upper, between);
    return isFactor(this.value) ? null : "wheelDoesNotRise";
  }
}
