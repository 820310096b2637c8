import * as messages from "../../words/compiled/physics/budget.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";

/** How the wheel moves as the stop closes: by a layout's own motion, or one led through contacts. */
export type TravelMotion = Pick<
  LayoutMotion,
  "range" | "fromRide" | "closingInto" | "wheelTravelInto" | "evaluate" | "closing" | "wheelTravel"
>;

/** ẑ the layout's own motion; m1 and m2 at the first and the last contact. */
export const handFormulas = {
  factor: { text: messages.mIWheelTravel, by: "z_i/ẑ_i" },
  before: "z = m1·ẑ",
  between: "m = m1 + (m2 − m1)·(s − s1)/(s2 − s1)",
  betweenTravel: "z = m·ẑ",
  beyond: messages.zMThere({ zOfTheLastContact: termNames.zOfTheLastContact }),
  ratio: "R = m1·R̂",
  found: {
    text: messages.sAtWhichZ,
    by: "s",
  },
} as const;

/** Room for rounding between two ways of adding up the same closing, mm. */
const rounding = 1e-9;
const mostSteps = 60;

/**
 * A layout's motion led through the travels at which the stop, and a rigid block in its place, were met
 * when the suspension was moved by hand.
 *
 * With ẑ(s) the layout's own motion, contacts (s_i, z_i) and m_i = z_i/ẑ(s_i): z = m(s)·ẑ(s), m = m_1 up
 * to s_1 and linear in s from s_1 to s_2; beyond the last contact z = z_n + m_n·(ẑ(s) − ẑ(s_n))·(1 + q).
 * So every contact is met exactly, whatever the layout's readings say; q is what the increments beyond
 * the last one may be off. At a contact the slope is the one from below.
 *
 * Valid where `lead` says so: 0 < s_1 < s_2, z_i > 0, 1 + q > 0, and z rising with s between them.
 * Lengths mm; nothing is allocated.
 */
export class HandMotion implements TravelMotion {
  #motion: LayoutMotion;
  readonly #slopes = new Float64Array(3);
  readonly #found = new Float64Array(1);
  #firstClosing = 0;
  #firstTravel = 0;
  #firstFactor = 1;
  #lastClosing = 0;
  #lastTravel = 0;
  #lastModelled = 0;
  /** dm/ds between two contacts, 1/mm. */
  #factorSlope = 0;
  /** dz/dẑ beyond the last contact. */
  #beyond = 1;

  constructor(motion: LayoutMotion) {
    this.#motion = motion;
  }

  /**
   * Leads a motion, set to its readings, through the contact of the stop and of the block; NaN for one
   * that was not made. False where that gives no motion.
   */
  lead(
    motion: LayoutMotion,
    stopClosing: number,
    stopTravel: number,
    blockClosing: number,
    blockTravel: number,
    q: number,
  ): boolean {
    this.#motion = motion;
    const hasStop = !Number.isNaN(stopTravel);
    const hasBlock = !Number.isNaN(blockTravel);
    const stopLast = hasStop && !(hasBlock && blockClosing > stopClosing);
    const stopFirst = hasStop && !(hasBlock && blockClosing < stopClosing);
    this.#lastClosing = stopLast ? stopClosing : blockClosing;
    this.#lastTravel = stopLast ? stopTravel : blockTravel;
    this.#firstClosing = stopFirst ? stopClosing : blockClosing;
    this.#firstTravel = stopFirst ? stopTravel : blockTravel;
    if (!(this.#firstClosing > 0 && this.#firstTravel > 0 && q > -1)) return false;
    if (!motion.wheelTravelInto(this.#found, 0, this.#firstClosing)) return false;
    const firstModelled = this.#found[0];
    this.#firstFactor = this.#firstTravel / firstModelled;
    const between = this.#lastClosing - this.#firstClosing;
    if (between > 0 && !motion.wheelTravelInto(this.#found, 0, this.#lastClosing)) return false;
    this.#lastModelled = this.#found[0];
    const lastFactor = this.#lastTravel / this.#lastModelled;
    this.#beyond = lastFactor * (1 + q);
    this.#factorSlope = between > 0 ? (lastFactor - this.#firstFactor) / between : 0;
    if (between === 0) return true;
    return (
      this.#risesAt(firstModelled, this.#firstFactor) &&
      this.#risesAt(this.#lastModelled, lastFactor)
    );
  }

  /** Does z rise with s at a contact, by the law between two of them? */
  #risesAt(modelled: number, factor: number): boolean {
    this.#motion.evaluate(modelled, this.#slopes);
    return factor / this.#slopes[1] + this.#factorSlope * modelled > 0;
  }

  /** Before the first contact, between two, or beyond the last. */
  partOf(s: number): "before" | "between" | "beyond" {
    if (s <= this.#firstClosing + rounding) return "before";
    return s <= this.#lastClosing + rounding ? "between" : "beyond";
  }

  /** m at a closing, mm, up to the last contact. */
  factorAt(s: number): number {
    return factorBetween(this.#firstFactor, this.#factorSlope, s - this.#firstClosing);
  }

  fromRide(): void {
    this.#motion.fromRide();
  }

  range(): readonly [number, number] {
    const [least, greatest] = this.#motion.range();
    return [
      this.#firstFactor * least,
      this.#lastTravel + this.#beyond * (greatest - this.#lastModelled),
    ];
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    if (Math.abs(s - this.#firstClosing) <= rounding) {
      out[place] = this.#firstTravel;
      return true;
    }
    if (!this.#motion.wheelTravelInto(out, place, s)) return false;
    const modelled = out[place];
    out[place] =
      s <= this.#firstClosing + rounding
        ? this.#firstFactor * modelled
        : s <= this.#lastClosing + rounding
          ? factorBetween(this.#firstFactor, this.#factorSlope, s - this.#firstClosing) * modelled
          : this.#lastTravel + this.#beyond * (modelled - this.#lastModelled);
    return true;
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    if (z <= this.#firstTravel + rounding) {
      return this.#motion.closingInto(out, place, z / this.#firstFactor);
    }
    if (z > this.#lastTravel + rounding) {
      const modelled = this.#lastModelled + (z - this.#lastTravel) / this.#beyond;
      return this.#motion.closingInto(out, place, modelled);
    }
    out[place] = this.#closingBetween(z);
    return true;
  }

  /** s between two contacts, by Newton's method held between them. */
  #closingBetween(z: number): number {
    let low = this.#firstClosing;
    let high = this.#lastClosing;
    let s = low + ((high - low) * (z - this.#firstTravel)) / (this.#lastTravel - this.#firstTravel);
    for (let step = 0; step < mostSteps; step++) {
      this.#motion.wheelTravelInto(this.#found, 0, s);
      const modelled = this.#found[0];
      this.#motion.evaluate(modelled, this.#slopes);
      const factor = this.factorAt(s);
      const excess = factor * modelled - z;
      if (excess > 0) high = s;
      else low = s;
      const slope = factor / this.#slopes[1] + this.#factorSlope * modelled;
      const next = s - excess / slope;
      const held = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(held - s) < 1e-12 * high) return held;
      s = held;
    }
    return s;
  }

  evaluate(z: number, out: Float64Array): void {
    if (z <= this.#firstTravel + rounding) {
      this.#motion.evaluate(z / this.#firstFactor, out);
      stretch(out, this.#firstFactor);
      return;
    }
    if (z > this.#lastTravel + rounding) {
      this.#motion.evaluate(this.#lastModelled + (z - this.#lastTravel) / this.#beyond, out);
      stretch(out, this.#beyond);
      return;
    }
    const s = this.#closingBetween(z);
    this.#motion.wheelTravelInto(this.#found, 0, s);
    const modelled = this.#found[0];
    this.#motion.evaluate(modelled, out);
    const slope = out[1];
    const factor = this.factorAt(s);
    const rise = factor / slope + this.#factorSlope * modelled;
    const bend = (-factor * out[2]) / slope ** 3 + (2 * this.#factorSlope) / slope;
    out[0] = s;
    out[1] = 1 / rise;
    out[2] = -bend / rise ** 3;
  }

  closing(z: number): number {
    return this.closingInto(this.#found, 0, z) ? this.#found[0] : Number.NaN;
  }

  wheelTravel(s: number): number {
    return this.wheelTravelInto(this.#found, 0, s) ? this.#found[0] : Number.NaN;
  }
}

/** m beyond the first contact, by m1 and dm/ds. */
function factorBetween(first: number, slope: number, closing: number): number {
  return first + slope * closing;
}

/** [s, ds/dẑ, d²s/dẑ²] to the same by z = factor·ẑ + constant. */
function stretch(slopes: Float64Array, factor: number): void {
  slopes[1] = slopes[1] / factor;
  slopes[2] = slopes[2] / (factor * factor);
}
