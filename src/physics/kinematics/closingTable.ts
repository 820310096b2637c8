import type { LayoutMotion } from "../motion/layoutMotion.ts";

/** Distance of two rows of the table, mm of wheel travel. */
const step = 2;
/** What a vehicle's wheel may travel, mm; beyond it the motion itself is asked. */
const leastTravel = -200;
const greatestTravel = 300;
/** Numbers kept of a row's interval: the six coefficients of a polynomial. */
const coefficients = 6;
/** Greatest differences from the motion itself half-way between rows: mm, 1, 1/mm. */
const allowed = [1e-10, 1e-10, 1e-9] as const;

/**
 * s(z) with both derivatives by a table, for the many that an integration asks for: between rows the polynomial
 * of fifth degree that has s, ds/dz and d²s/dz² of the motion at both (Hermite interpolation; error
 * (h/2)⁶·s⁽⁶⁾/720). Every interval is compared with the motion half-way; where it differs by more than
 * 1e-10 mm, 1e-10 or 1e-9/mm, as near the ends of a reach or at a contact found by hand, the motion itself
 * answers. An interval is filled when it is first asked for.
 */
export class ClosingTable {
  readonly #motion: Pick<LayoutMotion, "evaluate" | "fromRide">;
  readonly #least: number;
  readonly #greatest: number;
  readonly #rows: Float64Array;
  /** Per interval: 0 not filled, 1 filled, 2 by the motion itself. */
  readonly #state: Uint8Array;
  readonly #ends = [new Float64Array(3), new Float64Array(3)] as const;
  readonly #half = new Float64Array(3);

  /** @param range of the motion, mm; the motion is set, and stays so */
  constructor(
    motion: Pick<LayoutMotion, "evaluate" | "fromRide">,
    range: readonly [number, number],
  ) {
    this.#motion = motion;
    this.#least = Math.max(range[0], leastTravel);
    this.#greatest = Math.min(range[1], greatestTravel);
    const intervals = Math.max(0, Math.floor((this.#greatest - this.#least) / step));
    this.#rows = new Float64Array(intervals * coefficients);
    this.#state = new Uint8Array(intervals);
  }

  /** Fills [s, ds/dz, d²s/dz²] in mm, 1, 1/mm for a z within the range. */
  evaluate(z: number, out: Float64Array): void {
    const place = Math.floor((z - this.#least) / step);
    const state = this.#state[place];
    if (state === 1) this.#read(place, z, out);
    else if (state === 0) this.#fill(place, z, out);
    else this.#ask(z, out);
  }

  /** The motion itself, the same whatever was asked before. */
  #ask(z: number, out: Float64Array): void {
    this.#motion.fromRide();
    this.#motion.evaluate(z, out);
  }

  #read(place: number, z: number, out: Float64Array): void {
    const rows = this.#rows;
    const at = place * coefficients;
    const x = z - (this.#least + place * step);
    const c0 = rows[at];
    const c1 = rows[at + 1];
    const c2 = rows[at + 2];
    const c3 = rows[at + 3];
    const c4 = rows[at + 4];
    const c5 = rows[at + 5];
    out[0] = c0 + x * (c1 + x * (c2 + x * (c3 + x * (c4 + x * c5))));
    out[1] = c1 + x * (2 * c2 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)));
    out[2] = 2 * c2 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5));
  }

  #fill(place: number, z: number, out: Float64Array): void {
    const from = this.#least + place * step;
    const [low, high] = this.#ends;
    this.#ask(from, low);
    this.#ask(from + step, high);
    const [s0 = 0, d0 = 0, b0 = 0] = low;
    const [s1 = 0, d1 = 0, b1 = 0] = high;
    const h = step;
    // What is left at the far end of the parabola that has the near end's values, times powers of h.
    const left = s1 - s0 - h * d0 - (h * h * b0) / 2;
    const leftSlope = h * (d1 - d0 - h * b0);
    const leftBend = h * h * (b1 - b0);
    const rows = this.#rows;
    const at = place * coefficients;
    rows[at] = s0;
    rows[at + 1] = d0;
    rows[at + 2] = b0 / 2;
    rows[at + 3] = (10 * left - 4 * leftSlope + leftBend / 2) / h ** 3;
    rows[at + 4] = (-15 * left + 7 * leftSlope - leftBend) / h ** 4;
    rows[at + 5] = (6 * left - 3 * leftSlope + leftBend / 2) / h ** 5;
    const half = this.#half;
    this.#ask(from + h / 2, half);
    this.#read(place, from + h / 2, out);
    const isClose = allowed.every((most, index) => Math.abs(out[index] - half[index]) <= most);
    this.#state[place] = isClose ? 1 : 2;
    this.evaluate(z, out);
  }
}
