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
