import * as messages from "../../words/compiled/physics/stop.ts";
import type { DampingPoint, Stop } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";

/** A stop's damping: force per speed, found only by tests at speed (common practice, no source). */
export interface StopDamping {
  /**
   * c, N·s/mm, ≥ 0, at a compression x in mm; velocity is the compression's rate, mm/s, of which only
   * the sign counts: > 0 compressing, otherwise rebounding. 0 at every x for a stop not tested at speed.
   */
  coefficient(x: number, velocity: number): number;
}

/** A stop of which nothing is known at speed: no damping is assumed from a static curve. */
export const undamped: StopDamping = { coefficient: () => 0 };

/**
 * The stop's damping from its table of tests at speed: straight lines between points, end values held.
 * Undamped where there is no table or the stop was not tested at speed.
 *
 * Errors: `dampingNotFinite`, `dampingNegative`, `dampingNotRising` (compression must rise row by row).
 */
export function stopDamping(stop: Stop): Outcome<StopDamping> {
  const table = stop.damping;
  if (table === null || table.length === 0 || !stop.testedAtSpeed) return succeed(undamped);
  let before = Number.NEGATIVE_INFINITY;
  for (const row of table) {
    if (!row.every(Number.isFinite)) {
      return fail("dampingNotFinite", [messages.rowOfStopsDamping]);
    }
    if (row[1] < 0 || row[2] < 0) {
      return fail("dampingNegative", [messages.stopsDampingCannotBe]);
    }
    if (row[0] <= before) {
      return fail("dampingNotRising", [messages.compressionInStopsDamping]);
    }
    before = row[0];
  }
  return succeed(new TabledDamping(table));
}

class TabledDamping implements StopDamping {
  readonly #depths: Float64Array;
  readonly #compressing: Float64Array;
  readonly #rebounding: Float64Array;

  constructor(table: readonly DampingPoint[]) {
    this.#depths = Float64Array.from(table, (row) => row[0]);
    this.#compressing = Float64Array.from(table, (row) => row[1]);
    this.#rebounding = Float64Array.from(table, (row) => row[2]);
  }

  coefficient(x: number, velocity: number): number {
    const values = velocity > 0 ? this.#compressing : this.#rebounding;
    const depths = this.#depths;
    const last = depths.length - 1;
    if (!(x > depths[0])) return values[0];
    if (x >= depths[last]) return values[last];
    let row = 1;
    while (depths[row] < x) row++;
    const from = depths[row - 1];
    const share = (x - from) / (depths[row] - from);
    const low = values[row - 1];
    return low + share * (values[row] - low);
  }
}
