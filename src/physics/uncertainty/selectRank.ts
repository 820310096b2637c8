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
    const pivot = values[rank];
    let up = low;
    let down = high;
    values[rank] = values[low];
    values[low] = pivot;
    if (values[high] > pivot) {
      values[low] = values[high];
      values[high] = pivot;
    }
    while (up < down) {
      const held = values[up];
      values[up] = values[down];
      values[down] = held;
      up++;
      down--;
      while (values[up] < pivot) up++;
      while (values[down] > pivot) down--;
    }
    if (values[low] === pivot) {
      const held = values[low];
      values[low] = values[down];
      values[down] = held;
    } else {
      down++;
      const held = values[down];
      values[down] = values[high];
      values[high] = held;
    }
    if (down <= rank) low = down + 1;
    if (rank <= down) high = down - 1;
  }
  return values[rank];
}
