import type { MotionFault } from "../layoutMotion.ts";
import type { MeasuredAngle } from "../measuredQuantity.ts";
import { Turn } from "../turn.ts";

/** z of a wheel on a carrier that turns by δ while its lower joint rises. */
export const carrierFormula = "z = L up + e·sin δ + v·(cos δ − 1)";

/**
 * How the wheel rises as the arm that carries the stop turns. z, mm, is zero at ride and positive in
 * jounce; a turn is positive with the outer end up, rad. `follow` and `rise` say how good a place is:
 * false off the branch through the ride height on which the wheel rises.
 */
export abstract class WheelPath {
  /** z of the turn that `rise` or `follow` took last, mm. */
  travel = 0;
  /** dz/dα, mm/rad, above 0; after `follow` alone. */
  slope = 0;
  /** d²z/dα², mm/rad²; after `follow` alone. */
  curve = 0;

  /** Takes its quantities as they are set now; `scale` m, above 0, multiplies every z. */
  abstract set(scale: number): MotionFault | null;
  /** Has `turnFor` search from the ride height, as after `set`. */
  fromRide(): void {}
  abstract rise(turn: Turn): boolean;
  abstract follow(turn: Turn): boolean;
  /** Turns of the wheel carrier and the other arm, rad, where the path has just been followed to `turn`. */
  abstract joined(turn: Turn): { readonly carrier: number; readonly otherArm: number };
  /** Fills the turn at which the wheel has risen by z; false where it cannot, and then no number. */
  abstract turnFor(z: number, turn: Turn): boolean;
}

const atRide = new Turn();

/** Steps after which a solution that has not settled counts as not to be reached. */
const mostSteps = 60;
/** The furthest that one step turns, rad. */
const longestStep = 0.25;
/** A step h is the last one where h·(1 + |z″/z′|) is below this, rad: what is left is of its third power. */
const settled = 2e-5;
/** A step may make the slope this many times as great or as small; one over a turning place makes more of it. */
const mostSlopeChange = 4;
/** A step cut down to this leads nowhere, rad. */
const shortestStep = 1e-12;
/** Sine of a turn below which its travel tells no more than the slope at ride. */
const leastWay = 0.01;

/**
 * A path without a closed inverse: the turn of a z is found by Halley's method from where a simple arm would
 * stand that went through the place risen to last, or from the ride height out, each step at most 0.25 rad
 * and halved where it leaves the rising branch or falls on another, so that it stays on the branch through
 * the ride height. Source: any text on root finding; a step h leaves an error of the order h³.
 */
export abstract class SolvedPath extends WheelPath {
  #slopeAtRide = 0;
  /** tan of the angle of the arm that turns, at ride. */
  #armTangent = 0;
  // The place that was risen to last: its turn, mm and mm/rad.
  #passedSin = 0;
  #passedCos = 1;
  #passedTravel = 0;
  #passedSlope = 0;

  /** dz/dα at ride of the quantities as set, mm/rad. */
  protected abstract slopeAtRide(): number;
  /** Moves to a turn without the second derivative; false off the branch. */
  protected abstract riseTo(turn: Turn): boolean;

  /** To be called once the quantities are taken, with the line of the arm that turns. */
  protected standAtRide({ sin, cos }: MeasuredAngle): number {
    this.#slopeAtRide = this.slopeAtRide();
    this.#armTangent = sin / cos;
    this.#passedSin = 0;
    return this.#slopeAtRide;
  }

  override fromRide(): void {
    this.#passedSin = 0;
  }

  rise(turn: Turn): boolean {
    if (!this.riseTo(turn)) return false;
    this.#passedSin = turn.sin;
    this.#passedCos = turn.cos;
    this.#passedTravel = this.travel;
    this.#passedSlope = this.slope;
    return true;
  }

  /**
   * Starts where a simple arm would stand, z = A·(1 − cos α) + B·sin α, that has the slope at ride or, better,
   * travel and slope of the place risen to last; false where it cannot, or off the branch.
   */
  #startNear(z: number, turn: Turn): boolean {
    const sin = this.#passedSin;
    let b = this.#slopeAtRide;
    let a = b * this.#armTangent;
    if (sin > leastWay || sin < -leastWay) {
      // A·(1 − cos α) + B·sin α = z and A·sin α + B·cos α = z′: the determinant is cos α − 1.
      const cos = this.#passedCos;
      const perRisen = 1 / (1 - cos);
      a = (this.#passedSlope * sin - this.#passedTravel * cos) * perRisen;
      b = this.#passedTravel * sin * perRisen - this.#passedSlope;
    }
    // A·cos α − B·sin α = A − z, on the branch through α = 0.
    const left = a - z;
    const square = a * a + b * b;
    const beside = Math.sqrt(square - left * left);
    const perSquare = 1 / square;
    turn.cos = (a * left + b * beside) * perSquare;
    turn.sin = (a * beside - b * left) * perSquare;
    return b > 0 && beside > 0 && this.follow(turn) && this.#isNear(0, this.#slopeAtRide, turn.sin);
  }

  turnFor(z: number, turn: Turn): boolean {
    if (!this.#startNear(z, turn)) {
      turn.cos = 1;
      turn.sin = 0;
      this.follow(atRide);
    }
    for (let step = 0; step < mostSteps; step++) {
      let change = this.#stepTo(z);
      const { cos, sin } = turn;
      const { travel, slope } = this;
      turn.by(change);
      if (Math.abs(change) * (slope + Math.abs(this.curve)) < settled * slope) return true;
      while (!(this.follow(turn) && this.#isNear(travel, slope, change))) {
        change /= 2;
        if (!(change > shortestStep || change < -shortestStep)) return false;
        turn.cos = cos;
        turn.sin = sin;
        turn.by(change);
      }
    }
    return false;
  }

  /** Still on the branch after a step: risen in its direction, at a slope that is not wholly another. */
  #isNear(travel: number, slope: number, change: number): boolean {
    const risen = (this.travel - travel) * change;
    return (
      risen >= 0 && this.slope > slope / mostSlopeChange && this.slope < slope * mostSlopeChange
    );
  }

  #stepTo(z: number): number {
    const perSlope = 1 / this.slope;
    const byNewton = (z - this.travel) * perSlope;
    const bent = 1 + 0.5 * byNewton * this.curve * perSlope;
    const change = bent > 0.5 ? byNewton / bent : byNewton;
    return Math.min(Math.max(change, -longestStep), longestStep);
  }
}
