/**
 * The linear quarter car on white-noise road velocity of intensity D: stationary variances in closed
 * form. Units here m, N, kg, s. Valid for linear springs and dampers (bump = rebound), a tyre that
 * stays on the ground, and M, c, kt > 0; outside that, Infinity or NaN: callers check first.
 *
 * Source: derived from the Lyapunov equation of the two-mass model; the subject of Dahlberg,
 * J. Sound Vib. 58 (1978) 179, and Gobbi, Levi, Mastinu, J. Sound Vib. 298 (2006) 1055.
 */
export interface LinearQuarterCar {
  /** ms, kg */
  readonly sprungMass: number;
  /** mu, kg */
  readonly unsprungMass: number;
  /** ks at the wheel, N/m */
  readonly wheelRate: number;
  /** kt, N/m */
  readonly tyreRate: number;
  /** c at the wheel, mean of bump and rebound, N·s/m */
  readonly damping: number;
}

/**
 * Variance of suspension travel, m²: D·M/(2c). Independent of both stiffnesses.
 *
 * @param intensity D, m²/s
 * @param totalMass M = ms + mu, kg
 * @param damping c, N·s/m, above 0
 */
export function travelVariance(intensity: number, totalMass: number, damping: number): number {
  return (intensity * totalMass) / (2 * damping);
}

/** Variance of the speed of suspension travel, m²/s²: D·kt/(2c). */
export function travelSpeedVariance(intensity: number, tyreRate: number, damping: number): number {
  return (intensity * tyreRate) / (2 * damping);
}

/** Variance of sprung acceleration, m²/s⁴: D/2·(kt·c/ms² + M·ks²/(c·ms²)). */
export function sprungAccelerationVariance(intensity: number, car: LinearQuarterCar): number {
  const { sprungMass, unsprungMass, wheelRate, tyreRate, damping } = car;
  const totalMass = sprungMass + unsprungMass;
  return (
    ((intensity / 2) * (tyreRate * damping + (totalMass * wheelRate ** 2) / damping)) /
    sprungMass ** 2
  );
}

/**
 * Variance of tyre deflection, m²:
 * D/(2c·kt²·ms²)·(kt·c²·M² + ks²·M³ − 2ks·kt·ms·mu·M + kt²·ms²·mu).
 */
export function tyreDeflectionVariance(intensity: number, car: LinearQuarterCar): number {
  const { sprungMass, unsprungMass, wheelRate, tyreRate, damping } = car;
  const totalMass = sprungMass + unsprungMass;
  const bracket =
    tyreRate * damping ** 2 * totalMass ** 2 +
    wheelRate ** 2 * totalMass ** 3 -
    2 * wheelRate * tyreRate * sprungMass * unsprungMass * totalMass +
    tyreRate ** 2 * sprungMass ** 2 * unsprungMass;
  return (intensity * bracket) / (2 * damping * tyreRate ** 2 * sprungMass ** 2);
}
