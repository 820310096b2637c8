import * as messages from "../../../words/compiled/physics/motion/path.ts";
import * as termNames from "../../../words/compiled/physics/terms.ts";
import { leastCosine, type MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../measuredQuantity.ts";
import { Turn } from "../turn.ts";
import { SolvedPath } from "./wheelPath.ts";

/** What is measured of a strut and the arm below it, front view. Lengths mm. */
interface StrutPlaces {
  readonly armLength: MeasuredLength;
  readonly armLine: MeasuredAngle;
  /** D0, lower joint to the middle of the top mount, and ε, that line's lean. */
  readonly jointToTop: MeasuredLength;
  readonly jointToTopLean: MeasuredAngle;
  /** β, the lean of the strut's own axis. */
  readonly axisLean: MeasuredAngle;
  /** e, the lower joint out to the tire's middle plane. */
  readonly tyreOffset: MeasuredLength;
  /** v, the wheel's center above the lower joint. */
  readonly wheelAbove: MeasuredLength;
}

const atRide = new Turn();

/** Least rise of the wheel per turn of the arm, as a share of the arm's length. */
const leastRise = 0.02;

/** With a, φ0 the lower arm, L0 and β the line from its joint to the top mount, βs the strut's own lean. */
export const strutFormulas = {
  aside: messages.pL0Sin,
  carrierSlope: messages.dDPX,
  slope: messages.dzDCos0,
  jointRise: {
    text: messages.lUpHowFarLower,
    by: "a·[sin φ0 − sin(φ0 − α)]",
  },
  carrier: messages.wheelCarriersTurnLean({
    leanOfTheLineToTheTop: termNames.leanOfTheLineToTheTop,
  }),
} as const;

/** What `StrutPath` has found on its way to z, mm and rad. */
interface StrutStand {
  readonly jointRise: number;
  /** From the lower joint to the top mount. */
  readonly inward: number;
  readonly up: number;
  readonly distance: number;
  /** X and W, mm², and dδ/dα. */
  readonly across: number;
  readonly along: number;
  readonly carrierSlope: number;
}

/**
 * The wheel on a strut, front view, y outward, z up, origin at the lower arm's pivot.
 *
 * L(α) the lower joint, T = L(0) + D0·(−sin ε, cos ε) the top mount, D = |T − L|. The strut's axis passes the
 * lower joint at the distance p = D0·sin(β − ε), which is part of the wheel carrier; so carrier and wheel
 * turn by δ = lean(T − L) + asin(p/D) − β, and z = m·[L_z − L_z(0) + e·sin δ + v·(cos δ − 1)].
 * With t = T − L, X = l × t, W = l·t and q = √(D² − p²): dδ/dα = (p·X/q − W)/D²,
 * d²δ/dα² = (p·(X/q)′ − X + 2·X·dδ/dα)/D². All mm and rad.
 * Faults: `degenerateTriangle` where the joint falls on the axis' own distance; `wheelDoesNotRise`.
 */
export class StrutPath extends SolvedPath {
  readonly #places: StrutPlaces;
  #scale = 1;
  #lowerY = 0;
  #lowerZ = 0;
  #topY = 0;
  #topZ = 0;
  #aside = 0;
  #sinAxis = 0;
  #cosAxis = 1;
  #offset = 0;
  #above = 0;
  #leastRise = 0;
  #sinTurn = 0;
  #cosTurn = 1;
  // Of the turn followed last.
  #toY = 0;
  #toZ = 0;
  #across = 0;
  #along = 0;
  #carrierSlope = 0;

  constructor(places: StrutPlaces) {
    super();
    this.#places = places;
  }

  set(scale: number): MotionFault | null {
    const { armLength, armLine, jointToTop, jointToTopLean, axisLean, tyreOffset, wheelAbove } =
      this.#places;
    const arm = armLength.value;
    const long = jointToTop.value;
    this.#scale = scale;
    this.#lowerY = arm * armLine.cos;
    this.#lowerZ = -arm * armLine.sin;
    this.#topY = this.#lowerY - long * jointToTopLean.sin;
    this.#topZ = this.#lowerZ + long * jointToTopLean.cos;
    this.#aside = long * (axisLean.sin * jointToTopLean.cos - axisLean.cos * jointToTopLean.sin);
    this.#sinAxis = axisLean.sin;
    this.#cosAxis = axisLean.cos;
    this.#offset = tyreOffset.value;
    this.#above = wheelAbove.value;
    this.#leastRise = leastRise * arm * scale;
    if (!(Math.abs(this.#aside) < long * (1 - leastCosine))) return "degenerateTriangle";
    return this.standAtRide(armLine) >= this.#leastRise ? null : "wheelDoesNotRise";
  }

  protected slopeAtRide(): number {
    this.follow(atRide);
    return this.slope;
  }

  protected riseTo(turn: Turn): boolean {
    return this.follow(turn);
  }

  /** p, mm. */
  get aside(): number {
    return this.#aside;
  }

  /** Where the turn followed last has brought it. */
  get stand(): StrutStand {
    return {
      jointRise: this.#topZ - this.#toZ - this.#lowerZ,
      inward: -this.#toY,
      up: this.#toZ,
      distance: Math.hypot(this.#toY, this.#toZ),
      across: this.#across,
      along: this.#along,
      carrierSlope: this.#carrierSlope,
    };
  }

  joined() {
    return { carrier: Math.atan2(this.#sinTurn, this.#cosTurn), otherArm: 0 };
  }

  follow({ cos, sin }: Turn): boolean {
    const y = this.#lowerY * cos - this.#lowerZ * sin;
    const z = this.#lowerZ * cos + this.#lowerY * sin;
    const toY = this.#topY - y;
    const toZ = this.#topZ - z;
    const square = toY * toY + toZ * toZ;
    const aside = this.#aside;
    const long = Math.sqrt(square - aside * aside);
    // The strut's own axis: T − L turned by asin(p/D); both over D.
    const sinLean = (toZ * aside - toY * long) / square;
    const cosLean = (toZ * long + toY * aside) / square;
    const sinTurn = sinLean * this.#cosAxis - cosLean * this.#sinAxis;
    const cosTurn = cosLean * this.#cosAxis + sinLean * this.#sinAxis;
    this.#sinTurn = sinTurn;
    this.#cosTurn = cosTurn;
    const e = this.#offset;
    const v = this.#above;
    const out = e * cosTurn - v * sinTurn;
    const up = e * sinTurn + v * cosTurn;
    const cross = y * toZ - z * toY;
    const dot = y * toY + z * toZ;
    const shortening = cross / long;
    const shorteningRate = (shortening * shortening - (y * this.#topY + z * this.#topZ)) / long;
    const turn = (aside * shortening - dot) / square;
    this.#toY = toY;
    this.#toZ = toZ;
    this.#across = cross;
    this.#along = dot;
    this.#carrierSlope = turn;
    const turnRate = (aside * shorteningRate - cross + 2 * cross * turn) / square;
    const scale = this.#scale;
    this.travel = scale * (z - this.#lowerZ + up - v);
    this.slope = scale * (y + turn * out);
    this.curve = scale * (-z + turnRate * out - turn * turn * up);
    return this.slope >= this.#leastRise;
  }
}
