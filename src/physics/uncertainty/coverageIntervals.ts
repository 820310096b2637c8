import * as messages from "../../words/compiled/physics/uncertainty.ts";
import type { Interval } from "../fitment.ts";
import { selectRank } from "./selectRank.ts";

/** Room for the draws of figures that are done with, taken again for the next. */
const idle: Float64Array[] = [];
const mostIdle = 72;

/** Of the usual 95 %. */
export const intervalFormulas = {
  lower: messages.lowerEnd25,
  upper: messages.upperEnd975,
  half: { text: messages.halfOfRange, by: messages.upperLower2 },
} as const;

/**
 * The probabilistically symmetric coverage intervals of several figures whose values come draw by draw:
 * from the (1 − p)/2 to the (1 + p)/2 percentile, between two ranks in proportion.
 * Source: JCGM 101:2008, 7.7 (the percentile between ranks is common practice).
 */
export class CoverageIntervals {
  readonly #values: readonly Float64Array[];
  #draws = 0;

  /**
   * @param figures how many
   * @param most how many draws may come
   */
  constructor(figures: number, most: number) {
    this.#values = Array.from({ length: figures }, () => roomFor(most));
  }

  /** @param draw a value of each figure, no NaN */
  add(draw: Float64Array): void {
    const values = this.#values;
    for (let figure = 0; figure < values.length; figure++) {
      values[figure][this.#draws] = draw[figure];
    }
    this.#draws++;
  }

  /**
   * Of every figure, null where no draw came. To be called once, last.
   *
   * @param probability 0.5 … 1
   */
  intervals(probability = 0.95): readonly (Interval | null)[] {
    const count = this.#draws;
    const tail = ((1 - probability) / 2) * (count - 1);
    return this.#values.map((values) => {
      const interval: Interval | null =
        count === 0
          ? null
          : [
              lowEnd(values, tail, count),
              highEnd(values, count - 1 - tail, Math.floor(tail), count),
            ];
      if (idle.length < mostIdle) idle.push(values);
      return interval;
    });
  }
}

function roomFor(count: number): Float64Array {
  const room = idle.pop();
  return room !== undefined && room.length >= count ? room : new Float64Array(count);
}

/** The value at a place between ranks, 0 … count − 1, of which few lie below. */
function lowEnd(draws: Float64Array, place: number, count: number): number {
  const rank = Math.floor(place);
  const above = selectRank(draws, Math.ceil(place), 0, count - 1);
  let below = Number.NEGATIVE_INFINITY;
  for (let index = 0; index <= rank; index++) below = Math.max(below, draws[index]);
  return below + (place - rank) * (above - below);
}

/** The same where few lie above, and the least stand before `from` already. */
function highEnd(draws: Float64Array, place: number, from: number, count: number): number {
  const rank = Math.floor(place);
  const below = selectRank(draws, rank, from, count - 1);
  let above = Number.POSITIVE_INFINITY;
  for (let index = Math.ceil(place); index < count; index++) {
    above = Math.min(above, draws[index]);
  }
  return below + (place - rank) * (above - below);
}
