import type { Interval } from "../fitment.ts";

/**
 * Moves the numbers of `values` so that the one of rank `rank` (0 = least) stands in its place, the
 * lesser before it and the greater behind it, and returns it. Source: R. W. Floyd & R. L. Rivest,
 * "Expected time bounds for selection" and "Algorithm 489", Commun. ACM 18 (1975) 165, 173.
 * No NaN among the values between `left` and `right`.
 */
export function selectRank(
  values: Float64Array,
  rank: number,
  left = 0,
  right = values.length - 1,
): number {
  let low = left;
  let high = right;
  while (high > low) {
    if (high - low > 600) {
      const count = high - low + 1;
      const place = rank - low + 1;
      const logarithm = Math.log(count);
      const sample = 0.5 * Math.exp((2 * logarithm) / 3);
      const spread =
        0.5 *
        Math.sqrt((logarithm * sample * (count - sample)) / count) *
        Math.sign(place - count / 2);
      const sampleLow = Math.max(low, Math.floor(rank - (place * sample) / count + spread));
      const sampleHigh = Math.min(
        high,
        Math.floor(rank + ((count - place) * sample) / count + spread),
      );
      selectRank(values, rank, sampleLow, sampleHigh);
    }
    const pivot = values[rank] as number;
    let up = low;
    let down = high;
    values[rank] = values[low] as number;
    values[low] = pivot;
    if ((values[high] as number) > pivot) {
      values[low] = values[high] as number;
      values[high] = pivot;
    }
    while (up < down) {
      const held = values[up] as number;
      values[up] = values[down] as number;
      values[down] = held;
      up++;
      down--;
      while ((values[up] as number) < pivot) up++;
      while ((values[down] as number) > pivot) down--;
    }
    if (values[low] === pivot) {
      const held = values[low] as number;
      values[low] = values[down] as number;
      values[down] = held;
    } else {
      down++;
      const held = values[down] as number;
      values[down] = values[high] as number;
      values[high] = held;
    }
    if (down <= rank) low = down + 1;
    if (rank <= down) high = down - 1;
  }
  return values[rank] as number;
}

/**
 * The probabilistically symmetric coverage interval of the first `count` (≥ 1) draws, from the
 * (1 − p)/2 to the (1 + p)/2 percentile; between two ranks in proportion. Reorders `draws`.
 * Source: JCGM 101:2008, 7.7 (the percentile between ranks is common practice).
 */
export function coverageInterval(draws: Float64Array, count: number, probability = 0.95): Interval {
  const tail = ((1 - probability) / 2) * (count - 1);
  const low = percentile(draws, tail, 0, count);
  return [low, percentile(draws, count - 1 - tail, Math.floor(tail), count)];
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
