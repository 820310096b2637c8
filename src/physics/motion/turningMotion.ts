import * as messages from "../../words/compiled/physics/motion.ts";
import type { StopContact } from "./contact/stopContact.ts";
import { DrawnFactor } from "./drawnFactor.ts";
import { LayoutMotion, leastCosine, type MotionFault, type Standing } from "./layoutMotion.ts";
import type { MeasuredAngle, QuantityFault } from "./measuredQuantity.ts";
import type { WheelPath } from "./path/wheelPath.ts";
import { Turn } from "./turn.ts";

export const turningFormulas = {
  ratio: "R = (dz/dα)/(ds/dα)",
  armPoint: "α = θ0 − asin(sin θ0 − c/d)",
  found: {
    text: messages.atWhichZIs,
    by: "α",
  },
} as const;

/** Whatever is computed from raw readings before contact and path take it. */
interface SetBefore {
  set(readings: Float64Array, from: number): QuantityFault | MotionFault | null;
}

/** Step by which the reach of a layout is looked for, and how far an arm turns at most, rad. */
const rangeStep = 0.01;
const mostTurn = Math.PI;
/** The ends of the reach lie so far inside of where it ends, rad, that rounding finds no way out. */
const endMargin = 1e-9;

/**
 * Stop and wheel move with one turn of an arm: the stop's contact gives s(α) and its inverse, the wheel's path
 * z(α) and its inverse. So ds/dz = s′/z′ and d²s/dz² = (s″ − z″·ds/dz)/z′², dashes by α. On the branch
 * through α = 0 both rise; its ends are where either stops rising.
 */
export class TurningMotion extends LayoutMotion {
  readonly #before: readonly SetBefore[];
  readonly contact: StopContact;
  readonly path: WheelPath;
  /** The line of the arm that carries the stop. */
  readonly #armLine: MeasuredAngle;
  /** m, the factor on every z. */
  readonly #scale: DrawnFactor;
  readonly #turn = new Turn();
  /** The reach of the readings as set, rad, and the sines of its ends; known once `range` has been asked for. */
  #leastTurn = Number.NaN;
  #greatestTurn = Number.NaN;
  #leastSine = Number.NEGATIVE_INFINITY;
  #greatestSine = Number.POSITIVE_INFINITY;

  constructor(
    before: readonly SetBefore[],
    contact: StopContact,
    path: WheelPath,
    armLine: MeasuredAngle,
    scalePlace: number,
  ) {
    super();
    this.#before = before;
    this.contact = contact;
    this.path = path;
    this.#armLine = armLine;
    this.#scale = new DrawnFactor(scalePlace);
  }

  set(readings: Float64Array, from = 0): MotionFault | null {
    const before = this.#before;
    for (let index = 0; index < before.length; index++) {
      const fault = (before[index] as SetBefore).set(readings, from);
      if (fault !== null) return fault;
    }
    this.#leastSine = Number.NEGATIVE_INFINITY;
    this.#greatestSine = Number.POSITIVE_INFINITY;
    const scale = this.#scale;
    return scale.set(readings, from) ?? this.contact.set() ?? this.path.set(scale.value);
  }

  override fromRide(): void {
    this.path.fromRide();
  }

  override standOffBy(standOff: number): void {
    this.contact.standOffBy(standOff);
  }

  range(): readonly [number, number] {
    const least = this.#farthest(-1);
    const greatest = this.#farthest(1);
    this.#leastTurn = least;
    this.#greatestTurn = greatest;
    const quarter = Math.PI / 2;
    if (least > -quarter) this.#leastSine = Math.sin(least - endMargin);
    if (greatest < quarter) this.#greatestSine = Math.sin(greatest + endMargin);
    // The ride height is within reach, also where its rounding says a hair otherwise.
    return [Math.min(0, this.#travelAt(least)), Math.max(0, this.#travelAt(greatest))];
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    const turn = this.#turn;
    const contact = this.contact;
    if (!(this.#turnTo(z) && contact.close(turn))) return false;
    out[place] = contact.closing;
    return true;
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    const turn = this.#turn;
    const path = this.path;
    if (!(this.contact.turnFor(s, turn) && this.#isWithin(turn) && path.rise(turn))) return false;
    out[place] = path.travel;
    return true;
  }

  evaluate(z: number, out: Float64Array): void {
    const turn = this.#turn;
    const contact = this.contact;
    const path = this.path;
    this.#turnTo(z);
    path.follow(turn);
    contact.follow(turn);
    const rise = path.slope;
    const slope = contact.slope / rise;
    out[0] = contact.closing;
    out[1] = slope;
    out[2] = (contact.curve - slope * path.curve) / (rise * rise);
  }

  armPointTravelInto(
    out: Float64Array,
    place: number,
    distance: number,
    clearance: number,
  ): boolean {
    const turn = this.#turn;
    const hasTurned = this.turnForArmPoint(distance, clearance, turn);
    if (!(hasTurned && this.#isWithin(turn) && this.path.rise(turn))) return false;
    out[place] = this.path.travel;
    return true;
  }

  /** Fills the turn at which a point of the arm has risen by a clearance, both mm; false where it cannot. */
  turnForArmPoint(distance: number, clearance: number, turn: Turn): boolean {
    const { sin, cos } = this.#armLine;
    const risen = sin - clearance / distance;
    const beside = Math.sqrt(1 - risen * risen);
    turn.cos = cos * beside + sin * risen;
    turn.sin = sin * beside - cos * risen;
    return beside >= leastCosine;
  }

  standAt(z: number): Standing | null {
    const turn = this.#turn;
    if (!(this.#turnTo(z) && this.path.follow(turn))) return null;
    const armPerMm = 1 / this.path.slope;
    return { arm: Math.atan2(turn.sin, turn.cos), armPerMm, ...this.path.joined(turn) };
  }

  /** On the branch through the ride height, as far as its ends are known. */
  #isWithin(turn: Turn): boolean {
    return turn.sin >= this.#leastSine && turn.sin <= this.#greatestSine;
  }

  /** The turn of a z: by the path, or by halving where the reach is known and the path went past it. */
  #turnTo(z: number): boolean {
    const turn = this.#turn;
    if (this.path.turnFor(z, turn) && this.#isWithin(turn)) return true;
    const isKnown = this.#leastSine > -1 || this.#greatestSine < 1;
    if (!isKnown) return false;
    let least = this.#leastTurn;
    let greatest = this.#greatestTurn;
    for (let halving = 0; halving < 60; halving++) {
      const middle = (least + greatest) / 2;
      if (this.#travelAt(middle) < z) least = middle;
      else greatest = middle;
    }
    return Math.abs(this.#travelAt(least) - z) < 1e-6;
  }

  #isReached(angle: number): boolean {
    this.#turn.to(angle);
    return this.path.follow(this.#turn) && this.contact.follow(this.#turn);
  }

  /** The last turn of the branch on one side, rad: walked to in small steps, then halved. */
  #farthest(direction: 1 | -1): number {
    let inside = 0;
    let outside = 0;
    while (this.#isReached(outside) && Math.abs(outside) < mostTurn) {
      inside = outside;
      outside += direction * rangeStep;
    }
    for (let halving = 0; halving < 40; halving++) {
      const middle = (inside + outside) / 2;
      if (this.#isReached(middle)) inside = middle;
      else outside = middle;
    }
    return inside - direction * endMargin;
  }

  #travelAt(angle: number): number {
    this.#isReached(angle);
    return this.path.travel;
  }
}
