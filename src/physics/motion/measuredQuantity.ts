import * as messages from "../../words/compiled/physics/motion.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
import { cosineOf, leastCosine, radiansPerDegree } from "./layoutMotion.ts";
import { sine } from "./sine.ts";

/** Why readings give no length or no angle. */
export type QuantityFault = "lengthLost" | "boltsApart" | "heightsApart" | "angleTooSteep";

/**
 * One length or angle of the formulas, computed from the raw readings that stand for it, so that each
 * raw reading is drawn in the doubt and not the result.
 */
interface MeasuredQuantity {
  /** Takes the readings, which stand in the array from `from` on, in the order of the plan's places. */
  set(readings: Float64Array, from: number): QuantityFault | null;
}

/** A length or an offset in mm. */
export interface MeasuredLength extends MeasuredQuantity {
  readonly value: number;
}

/** An angle below the horizontal, as sine and cosine; the cosine is above `leastCosine`. */
export interface MeasuredAngle extends MeasuredQuantity {
  readonly sin: number;
  readonly cos: number;
}

/** Lengths that can be computed with, mm: drawn values beyond them give no motion. */
const leastLength = 1e-3;
const greatestLength = 1e6;

/** As it was measured, mm: above 0, or of any sign where it is an offset. */
export class DirectLength implements MeasuredLength {
  value = 0;
  readonly #place: number;
  readonly #least: number;

  constructor(place: number, isOffset = false) {
    this.#place = place;
    this.#least = isOffset ? -greatestLength : leastLength;
  }

  set(readings: Float64Array, from: number): QuantityFault | null {
    this.value = readings[from + this.#place];
    return this.value >= this.#least && this.value <= greatestLength ? null : "lengthLost";
  }
}

/** A length that was not measured and has a value of its own, such as an inset of 0. */
export class GivenLength implements MeasuredLength {
  readonly value: number;

  constructor(value: number) {
    this.value = value;
  }

  set(): null {
    return null;
  }
}

export const boltFormulas = {
  along: messages.xPQD,
  length: "ℓ = √(p² − x²)",
} as const;

/**
 * The distance of a point from the pivot line, by tape alone: with d from bolt to bolt, p and q straight from
 * the front and the rear bolt's centre to the point, it stands x = (p² − q² + d²)/(2d) along the line
 * from the front bolt, and √(p² − x²) beside it (law of cosines). d, p, q in mm, above 0.
 * Fault `boltsApart` where the three do not form a triangle.
 */
export class BoltLength implements MeasuredLength {
  value = 0;
  /** x, mm. */
  along = 0;
  readonly #spacing: number;
  readonly #front: number;
  readonly #rear: number;

  constructor(spacing: number, front: number, rear: number) {
    this.#spacing = spacing;
    this.#front = front;
    this.#rear = rear;
  }

  set(readings: Float64Array, from: number): QuantityFault | null {
    const d = readings[from + this.#spacing];
    const p = readings[from + this.#front];
    const q = readings[from + this.#rear];
    const along = ((p - q) * (p + q) + d * d) / (2 * d);
    this.along = along;
    const square = (p - along) * (p + along);
    this.value = Math.sqrt(square);
    const isTriangle = d > 0 && p > 0 && q > 0 && this.value >= leastLength;
    return isTriangle && this.value <= greatestLength ? null : "boltsApart";
  }
}

/** As it was measured, degrees. */
export class DirectAngle implements MeasuredAngle {
  sin = 0;
  cos = 1;
  readonly #place: number;

  constructor(place: number) {
    this.#place = place;
  }

  set(readings: Float64Array, from: number): QuantityFault | null {
    const angle = readings[from + this.#place] * radiansPerDegree;
    this.sin = sine(angle);
    this.cos = cosineOf(angle, this.sin);
    return this.cos > leastCosine ? null : "angleTooSteep";
  }
}

/** A line that was not measured and is taken as level. */
export const levelAngle: MeasuredAngle = { sin: 0, cos: 1, set: () => null };

export const heightAngleFormula = messages.asinLength({
  heightOfItsInnerEnd: termNames.heightOfItsInnerEnd,
  heightOfItsOuterEnd: termNames.heightOfItsOuterEnd,
});

/**
 * The angle of a line of known length, by tape alone: sin θ = (height of its inner end − height of its
 * outer end)/length, both heights above the same level ground, mm.
 * Fault `heightsApart` where the heights differ by more than the line is long.
 */
export class HeightAngle implements MeasuredAngle {
  sin = 0;
  cos = 1;
  readonly #inner: number;
  readonly #outer: number;
  readonly #length: MeasuredLength;

  /** @param length has been set before */
  constructor(inner: number, outer: number, length: MeasuredLength) {
    this.#inner = inner;
    this.#outer = outer;
    this.#length = length;
  }

  set(readings: Float64Array, from: number): QuantityFault | null {
    const fall = readings[from + this.#inner] - readings[from + this.#outer];
    this.sin = fall / this.#length.value;
    const square = 1 - this.sin * this.sin;
    if (!(square > leastCosine * leastCosine)) return "heightsApart";
    this.cos = Math.sqrt(square);
    return null;
  }
}
