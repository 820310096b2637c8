/**
 * How often a stationary Gaussian motion passes a level. Source: Rice, Bell Syst. Tech. J. 23/24
 * (1944/45). Lengths mm, rates per second, speed m/s.
 */

/**
 * Zero upcrossings per second of suspension travel, ν0 = σ̇/(2πσ) = √(kt/M)/2π.
 *
 * @param tyreRate kt, N/m, at least 0
 * @param totalMass M, kg, above 0
 */
export function zeroUpcrossingsPerSecond(tyreRate: number, totalMass: number): number {
  return Math.sqrt(tyreRate / totalMass) / (2 * Math.PI);
}

/**
 * Upcrossings of `level` per km travelled: ν0·exp(−z²/2σ²)·1000/V with z = max(level, 0).
 *
 * @param level mm above the mean; below it the rate of the mean is given
 * @param sigma σ, mm, above 0
 * @param speed V, m/s, above 0
 */
export function upcrossingsPerKm(
  level: number,
  sigma: number,
  zeroUpcrossings: number,
  speed: number,
): number {
  const z = Math.max(level, 0);
  return ((zeroUpcrossings * 1000) / speed) * Math.exp(-(z * z) / (2 * sigma * sigma));
}

/**
 * The level, mm above the mean, passed `allowedPerKm` times per km: σ·√(2·ln(ν0·1000/(V·N))), and 0
 * where even the mean is passed less often than that.
 *
 * @param allowedPerKm N, above 0
 */
export function levelPassedPerKm(
  allowedPerKm: number,
  sigma: number,
  zeroUpcrossings: number,
  speed: number,
): number {
  const argument = Math.log((zeroUpcrossings * 1000) / (speed * allowedPerKm));
  return argument > 0 ? sigma * Math.sqrt(2 * argument) : 0;
}
