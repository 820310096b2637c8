/**
 * The value below which a share of sorted values lies, by linear interpolation between the order statistics at
 * 1 + share·(n − 1): definition 7 of Hyndman and Fan, Sample Quantiles in Statistical Packages, The American
 * Statistician 50 (1996). NaN for no values.
 */
export function quantile(sorted: readonly number[], share: number): number {
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const [a, b] = [sorted[low] ?? Number.NaN, sorted[Math.ceil(place)] ?? Number.NaN];
  return a + (place - low) * (b - a);
}

export interface Spread {
  readonly n: number;
  readonly median: number;
  /** Half of the values lie between these. */
  readonly quarter: number;
  readonly threeQuarters: number;
}

/** Null for no values. */
export function spreadOf(values: readonly number[]): Spread | null {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  if (sorted.length === 0) return null;
  return {
    n: sorted.length,
    median: quantile(sorted, 0.5),
    quarter: quantile(sorted, 0.25),
    threeQuarters: quantile(sorted, 0.75),
  };
}
