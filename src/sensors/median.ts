/** The median of at least one number; of an even count the mean of the two in the middle. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}

/** Makes the MAD of normal numbers their standard deviation: 1/Φ⁻¹(3/4). */
const normalConsistent = 1.482602218505602;

/**
 * The scatter of single samples as a standard deviation, in their unit: 1.4826 × the median absolute
 * deviation from the median. Up to half of the samples may be spoilt by a knock.
 * Source: Rousseeuw & Croux, J. Am. Stat. Assoc. 88 (1993) 1273; ISO 13528:2015, annex C (MADe).
 */
export function robustScatter(values: readonly number[]): number {
  const median = medianOf(values);
  return normalConsistent * medianOf(values.map((value) => Math.abs(value - median)));
}
