import type { Interval } from "../fitment.ts";
import { selectRank } from "./selectRank.ts";

/** Room for the draws of figures that are done with, taken again for the next. */
const idle: Float64Array[] = [];
const mostIdle = 12;

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
      (values[figure] as Float64Array)[this.#draws] = draw[figure] as number;
    }
    this.#draws++;
  }

  /** Of every figure, null where no draw came. To be called once, last. */
  intervals(probability = 0.95): readonly (Interval | null)[] {
    const count = this.#draws;
    const tail = ((1 - probability) / 2) * (count - 1);
    return this.#values.map((values) => {
      const interval: Interval | null =
        count === 0
          ? null
          : [
              percentile(values, tail, 0, count),
              percentile(values, count - 1 - tail, Math.floor(tail), count),
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

/** The value at a place between ranks, 0 … count − 1, where the least stand before `from` already. */
function percentile(draws: Float64Array, place: number, from: number, count: number): number {
  const rank = Math.floor(place);
  const share = place - rank;
  if (share === 0) return selectRank(draws, rank, from, count - 1);
  let low: number;
  let high: number;
  if (2 * rank < count) {
    high = selectRank(draws, rank + 1, from, count - 1);
    low = Number.NEGATIVE_INFINITY;
    for (let index = from; index <= rank; index++) low = Math.max(low, draws[index] as number);
  } else {
    low = selectRank(draws, rank, from, count - 1);
    high = Number.POSITIVE_INFINITY;
    for (let index = rank + 1; index < count; index++) {
      high = Math.min(high, draws[index] as number);
    }
  }
  return low + share * (high - low);
}
