import type { StopCurve } from "./stopCurve.ts";

/**
 * The preferred numbers of ISO 3:1973, series R5, from 10 to 1000, N/mm: the stiffness classes. Stops
 * are made from 50 to 6000 lbf/in, about 9 to 1050 N/mm (common practice, no source).
 */
export const stiffnessClasses: readonly number[] = [
  10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000,
];

/** Secant rate k = F(δu/2)/(δu/2), N/mm: the one number that stands for a stop's stiffness. */
export function secantRate(curve: StopCurve): number {
  return secantAt(curve, 0.5);
}

/**
 * The class nearest to a rate in N/mm (above 0), nearest in log10: n = round(5·log10 k) numbers the
 * R5 steps; a rate beyond either end takes the class at that end.
 */
export function stiffnessClassOf(rate: number): number {
  const steps = Math.round(5 * Math.log10(rate)) - 5;
  const place = Math.min(Math.max(steps, 0), stiffnessClasses.length - 1);
  return stiffnessClasses[place] as number;
}

/**
 * Progressive: the secant over the whole δu is at least twice the secant at 0.2·δu. Three published
 * curves of jounce stops reach 1.9 to 19; the 2 is common practice.
 */
export function isProgressive(curve: StopCurve): boolean {
  return secantAt(curve, 1) >= 2 * secantAt(curve, 0.2);
}

/** Force per compression at a share of the usable compression, N/mm. */
function secantAt(curve: StopCurve, share: number): number {
  const x = share * curve.usableCompressionMm;
  return curve.force(x) / x;
}
