import type { DoubtShare } from "../fitment.ts";
import { paired } from "../paired.ts";
import { type DrawnReading, standardUncertainty } from "./drawnReading.ts";

/**
 * First-order contributions to a result's uncertainty, c_i·u_i, signed, in the result's unit, one a
 * reading: half the change of the result as the reading goes from mean − u to mean + u.
 * Source: JCGM 100:2008, 5.1.2 and 5.1.3 note 2. The readings are taken as independent.
 *
 * Linearisation fails where the result bends within ±u: at a least of two limits that touch almost
 * together, near the end of the layout's reach, or where the first-order term vanishes (JCGM 100:2008,
 * 5.1.2 note, H.1.7). The shares then mislead; intervals and probabilities do not, since they come
 * from the draws.
 *
 * @param resultWith the result with one reading replaced and the rest at their means; NaN out of domain
 * @param result the result at the means
 * Where one side is out of the domain the other is taken alone; where both are, the contribution is 0.
 */
export function firstOrderContributions(
  readings: readonly DrawnReading<string>[],
  resultWith: (index: number, value: number) => number,
  result: number,
): Float64Array {
  return Float64Array.from(readings, (reading, index) => {
    const uncertainty = standardUncertainty(reading);
    if (uncertainty === 0) return 0;
    const above = resultWith(index, reading.mean + uncertainty);
    const below = resultWith(index, reading.mean - uncertainty);
    const change = (above - below) / 2;
    if (Number.isFinite(change)) return change;
    if (Number.isFinite(above)) return above - result;
    return Number.isFinite(below) ? result - below : 0;
  });
}

/** u_c = √Σ(c_i·u_i)², in the result's unit. Source: JCGM 100:2008, 5.1.2, equation 10. */
export function combinedUncertainty(contributions: Float64Array): number {
  let squares = 0;
  for (const contribution of contributions) squares += contribution * contribution;
  return Math.sqrt(squares);
}

/** Each reading's share of the variance, greatest first, equal ones by id; those without a part left out. */
export function doubtShares<Id extends string>(
  readings: readonly DrawnReading<Id>[],
  contributions: Float64Array,
): readonly DoubtShare<Id>[] {
  const combined = combinedUncertainty(contributions);
  if (!(combined > 0)) return [];
  return paired(readings, contributions)
    .map(([{ id }, contribution]) => ({ reading: id, share: (contribution / combined) ** 2 }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share || (a.reading < b.reading ? -1 : 1));
}
