import type { QuarterCar } from "./quarterCar.ts";

/**
 * Errors of a step that count as one tolerance, per m/s of the event's own speed: of the masses m, m,
 * m/s, m/s, of a branch of the stop N, and J of what the stop loses.
 */
const massScales = [0.05, 0.05, 1, 1] as const;
const branchScale = 1000;
const lossScale = 10;

/**
 * Change of the step size that leaves a step's error, as a share of the allowed one, safely within it.
 * Source: Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.4, with a factor of 0.8,
 * which asks for the fewest evaluations at equal error here, where every switch renews the laws.
 */
export function growth(error: number): number {
  return Math.min(5, 0.8 * Math.exp(-0.2 * Math.log(Math.max(error, 1e-5))));
}

/** Allowed error of each component, for `share` of a tolerance; its units are those of the scales. */
export function allowedErrors({ stateCount, isLossy }: QuarterCar, share: number): Float64Array {
  const allowed = new Float64Array(stateCount + (isLossy ? 1 : 0));
  allowed.fill(branchScale * share);
  for (const [mass, scale] of massScales.entries()) allowed[mass] = scale * share;
  if (isLossy) allowed[stateCount] = lossScale * share;
  return allowed;
}
