/** 97.5 % point of the normal distribution: 95 % of it lies within ± so many u. JCGM 100:2008, table G.1. */
export const coverage95 = 1.96;

/** No travel is found by hand to better than this, mm, whatever its ± says. Common practice. */
export const leastUncertaintyMm = 0.1;

/**
 * Normalised error E_n = (x − y)/√(U_x² + U_y²), with U = 1.96·u on each side, so that two values agree
 * at 95 % where |E_n| ≤ 1. The two must not share an uncertainty.
 * Source: E_n score of ISO 13528:2015, 9.7, and ISO/IEC 17043:2010, B.3.1.3 (from memory), with the
 * coverage factor 1.96 in place of 2.
 *
 * @param differenceMm measured less computed, mm
 * @param measured u_x, mm, ≥ 0
 * @param computed u_y, mm, ≥ 0
 */
export function normalisedError(differenceMm: number, measured: number, computed: number): number {
  return differenceMm / (coverage95 * Math.max(Math.hypot(measured, computed), leastUncertaintyMm));
}
