import * as messages from "../../../words/compiled/physics/motion/path.ts";
import * as termNames from "../../../words/compiled/physics/terms.ts";
import type { MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { type JointPlaces, leastJointHeight } from "../wheelRatio.ts";
import { SolvedPath } from "./wheelPath.ts";

/**
 * With b, θ0 the arm that drives, c, θo the other, Q the other's pivot from the driving one's, D from the
 * driving joint to it, ℓ the carrier. `carrier` is by the side on which it stands at ride.
 */
export const fourBarFormulas = {
  link: "ℓ = √(h² + k²)",
  jointRise: "b·[sin θ0 − sin(θ0 − α)]",
  distance: "√(across² + up²)",
  carrier: {
    "1": messages.wheelCarriersTurnAcos({
      itsDirectionAtRide: termNames.itsDirectionAtRide,
      directionOfQ: termNames.directionOfQ,
    }),
    "-1": messages.wheelCarriersTurnAcosD({
      itsDirectionAtRide: termNames.itsDirectionAtRide,
      directionOfQ: termNames.directionOfQ,
    }),
  },
} as const;

/** What a linkage has found on its way to z, mm and rad. */
interface FourBarStand {
  readonly pivotAcross: number;
  readonly pivotUp: number;
  readonly link: number;
  /** From the driving joint to the other arm's pivot. */
  readonly across: number;
  readonly up: number;
  readonly distance: number;
  readonly jointRise: number;
  readonly lowerRise: number;
  readonly carrier: number;
  /** The carrier's direction at ride from the driving joint, brought to the turn at which the sum is `carrier`. */
  readonly carrierAtRide: number;
  readonly side: 1 | -1;
}

/** One of the two arms of the linkage: its length, mm, and its angle below the horizontal at ride. */
export interface LinkageArm {
  readonly length: MeasuredLength;
  readonly line: MeasuredAngle;
}

/**
 * Smallest lever at which a linkage still counts as moving, as a share of its size: the sine between
 * wheel carrier and driven arm, and the rise of the wheel per turn over the driving arm's length.
 */
const leastLever = 0.02;

/**
 * Two arms and the wheel carrier between them as a planar four-bar linkage, front view, y outward, z up.
 *
 * The lower arm l (length, θl), the upper u (length, θu), the carrier from lower joint L to upper joint U with
 * U − L = (−k, h) at ride. The driving arm, the one with the stop, turns by α; the other joint lies where the
 * circle of the driven arm about its pivot meets the circle of the carrier about the driving joint
 * (law of cosines), on the side on which it stands at ride. With δ the carrier's turn the wheel's contact
 * point, e out and v above the lower joint, rises by z = m·[L_z − L_z(0) + e·sin δ + v·(cos δ − 1)].
 *
 * Derivatives from the loop equation: with velocities square to each link, l + ω_c·c = ω_u·u as vectors
 * (c the carrier), and its derivative once more. At ride dz/dα/(dzj/dα) = 1 + e·τ for a stop on the lower
 * arm (`InstantCentreRatio`) and (1 + e·τ)/(1 − k·τ) on the upper. All mm and rad; valid on the branch
 * through the ride height until carrier and driven arm come into one line or the wheel stops rising.
 * Faults: `jointsTooClose` where h − k·tan θu < 50 mm; `linkageStretched`, `wheelDoesNotRise` at ride.
 */
export abstract class FourBarPath extends SolvedPath {
  readonly lower: LinkageArm;
  readonly upper: LinkageArm;
  readonly joints: JointPlaces;
  readonly #wheelAbove: MeasuredLength;
  #scale = 1;
  // At ride: each arm from its own pivot to its joint, and the carrier from the lower joint to the upper.
  protected lowerY = 0;
  protected lowerZ = 0;
  protected upperY = 0;
  protected upperZ = 0;
  protected carrierY = 0;
  protected carrierZ = 0;
  /** Squares of the three lengths, mm². */
  protected lowerSquare = 0;
  protected upperSquare = 0;
  protected carrierSquare = 0;
  /** 1/carrierSquare. */
  #perCarrierSquare = 0;
  /** From the lower pivot to the upper. */
  protected baseY = 0;
  protected baseZ = 0;
  /** On which side of the carrier the driven arm lies at ride. */
  protected side: 1 | -1 = 1;
  /** Smallest cross product of carrier and driven arm, mm². */
  protected leastCross = 0;
  #leastRise = 0;
  #offset = 0;
  #above = 0;
  /** Where the wheel's contact point stands from the lower joint, after `place`. */
  protected out = 0;
  // From the driving joint to the other arm's pivot, after `move`.
  protected toY = 0;
  protected toZ = 0;
  protected jointRise = 0;
  #lowerRise = 0;
  #up = 0;
  #sinCarrier = 0;
  #cosCarrier = 1;

  constructor(
    lower: LinkageArm,
    upper: LinkageArm,
    joints: JointPlaces,
    wheelAbove: MeasuredLength,
  ) {
    super();
    this.lower = lower;
    this.upper = upper;
    this.joints = joints;
    this.#wheelAbove = wheelAbove;
  }

  /** The line of the arm with the stop, at ride. */
  protected abstract drivingLine(): MeasuredAngle;
  /** Length of the arm with the stop, squared, mm². */
  protected abstract drivingSquare(): number;
  /** Cross product of the carrier and the driven arm at ride, mm². */
  protected abstract drivenCross(): number;
  /** The driven arm's length, squared, mm². */
  protected abstract drivenSquare(): number;

  set(scale: number): MotionFault | null {
    const { lower, upper } = this;
    const height = this.joints.height.value;
    const inset = this.joints.inset.value;
    const between = height - (inset * upper.line.sin) / upper.line.cos;
    if (!(between >= leastJointHeight)) return "jointsTooClose";
    const lowerLength = lower.length.value;
    const upperLength = upper.length.value;
    this.#scale = scale;
    this.lowerY = lowerLength * lower.line.cos;
    this.lowerZ = -lowerLength * lower.line.sin;
    this.upperY = upperLength * upper.line.cos;
    this.upperZ = -upperLength * upper.line.sin;
    this.carrierY = -inset;
    this.carrierZ = height;
    this.carrierSquare = inset * inset + height * height;
    this.#perCarrierSquare = 1 / this.carrierSquare;
    this.lowerSquare = lowerLength * lowerLength;
    this.upperSquare = upperLength * upperLength;
    this.baseY = this.lowerY - inset - this.upperY;
    this.baseZ = this.lowerZ + height - this.upperZ;
    this.#offset = this.joints.tyreOffset.value;
    this.#above = this.#wheelAbove.value;
    const cross = this.drivenCross();
    this.side = cross < 0 ? -1 : 1;
    this.leastCross = leastLever * Math.sqrt(this.drivenSquare() * this.carrierSquare);
    this.#leastRise = leastLever * scale * Math.sqrt(this.drivingSquare());
    if (!(Math.abs(cross) >= this.leastCross)) return "linkageStretched";
    const slope = this.standAtRide(this.drivingLine());
    return slope >= this.#leastRise ? null : "wheelDoesNotRise";
  }

  protected slopeAtRide(): number {
    this.out = this.#offset;
    this.takeRideSpeeds();
    return this.slope;
  }

  /** Takes the speeds at ride, where every link stands as it was measured. */
  protected abstract takeRideSpeeds(): void;

  /** Moves the linkage to a turn; the second derivative only where it is wanted. */
  protected abstract move(turn: Turn, withCurve: boolean): boolean;

  protected riseTo(turn: Turn): boolean {
    return this.move(turn, false);
  }

  follow(turn: Turn): boolean {
    return this.move(turn, true);
  }

  /** How far the driven arm has turned, rad, from the driving arm's turn and where the carrier lies. */
  protected abstract drivenTurn(driving: Turn, carrierY: number, carrierZ: number): number;

  /** +1 where the lower arm drives, −1 where the upper does. */
  abstract readonly direction: 1 | -1;

  /** Where the turn moved to last has brought it. */
  get stand(): FourBarStand {
    const { direction, toY, toZ } = this;
    const pivotAcross = direction * this.baseY;
    const pivotUp = direction * this.baseZ;
    const carrier = Math.atan2(this.#sinCarrier, this.#cosCarrier);
    const atRide = Math.atan2(direction * this.carrierZ, direction * this.carrierY);
    const square = toY * toY + toZ * toZ;
    const distance = Math.sqrt(square);
    const link = Math.sqrt(this.carrierSquare);
    const corner = Math.acos(
      (square + this.carrierSquare - this.drivenSquare()) / (2 * distance * link),
    );
    const side = this.side === direction ? 1 : -1;
    const sum = Math.atan2(toZ, toY) + side * corner - carrier;
    const rounds = Math.round((sum - atRide) / (2 * Math.PI));
    return {
      pivotAcross,
      pivotUp,
      link,
      across: toY,
      up: toZ,
      distance,
      jointRise: this.jointRise,
      lowerRise: this.#lowerRise,
      carrier,
      carrierAtRide: atRide + rounds * 2 * Math.PI,
      side,
    };
  }

  joined(turn: Turn) {
    const cos = this.#cosCarrier;
    const sin = this.#sinCarrier;
    const y = this.carrierY * cos - this.carrierZ * sin;
    const z = this.carrierZ * cos + this.carrierY * sin;
    return { carrier: Math.atan2(sin, cos), otherArm: this.drivenTurn(turn, y, z) };
  }

  /** Takes where the lower joint and the carrier now are: z, and what its derivatives need. */
  protected place(lowerZ: number, carrierY: number, carrierZ: number): void {
    const perSquare = this.#perCarrierSquare;
    const cos = (this.carrierY * carrierY + this.carrierZ * carrierZ) * perSquare;
    const sin = (this.carrierY * carrierZ - this.carrierZ * carrierY) * perSquare;
    this.#cosCarrier = cos;
    this.#sinCarrier = sin;
    this.out = this.#offset * cos - this.#above * sin;
    this.#up = this.#offset * sin + this.#above * cos;
    this.#lowerRise = lowerZ - this.lowerZ;
    this.travel = this.#scale * (this.#lowerRise + this.#up - this.#above);
  }

  /**
   * Takes speeds per turn of the driving arm: of the lower joint's rise and of the carrier's turn. False where
   * the wheel no longer rises.
   */
  protected takeSpeeds(jointRise: number, carrierTurn: number): boolean {
    this.slope = this.#scale * (jointRise + carrierTurn * this.out);
    return this.slope >= this.#leastRise;
  }

  /** Takes the rates of both, and the carrier's turn once more. */
  protected takeRates(jointRise: number, carrierTurn: number, carrierTurnRate: number): void {
    this.curve =
      this.#scale * (jointRise + carrierTurnRate * this.out - carrierTurn * carrierTurn * this.#up);
  }
}
