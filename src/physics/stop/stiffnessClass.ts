import * as messages from "../../words/compiled/physics/stop.ts";
import type { StopCurve } from "./stopCurve.ts";

/**
 * The preferred numbers of ISO 3:1973, series R5, from 10 to 1000, N/mm: the stiffness classes. Stops
 * are made from 50 to 6000 lbf/in, about 9 to 1050 N/mm (common practice, no source).
 */
export const stiffnessClasses: readonly number[] = [
  10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000,
];

export const secantFormulas = { half: "δu / 2", rate: "k = F(δu/2) / (δu/2)" } as const;

/** Secant rate k = F(δu/2)/(δu/2), N/mm: the one number that stands for a stop's stiffness. */
export function secantRate(curve: StopCurve): number {
  return secantAt(curve, 0.5);
}

/** The first class in R5 is its step 5, 10^(5/5) = 10 N/mm. */
const firstStep = 5;
const lastStep = firstStep + stiffnessClasses.length - 1;

export const classFormulas = {
  exact: "5·log10 k",
  step: { text: messages.nNearestWholeNumber({ firstStep, lastStep }), by: "round(exact)" },
  class: messages.classR5N,
} as const;

/** Where a rate, N/mm, above 0, stands among the steps of R5. */
export function placeInSeries(rate: number): number {
  return 5 * Math.log10(rate);
}

/** The nearest step that is a class. */
export function classStep(rate: number): number {
  return Math.min(Math.max(Math.round(placeInSeries(rate)), firstStep), lastStep);
}

/**
 * The class nearest to a rate in N/mm (above 0), nearest in log10: n = round(5·log10 k) numbers the
 * R5 steps; a rate beyond either end takes the class at that end.
 */
export function stiffnessClassOf(rate: number): number {
  return stiffnessClasses[classStep(rate) - firstStep] as number;
}

export const progressiveFormulas = {
  early: "k1 = F(0.2·δu) / (0.2·δu)",
  whole: "k2 = F(δu) / δu",
  ratio: messages.k2K1,
} as const;

export const earlyShare = 0.2;
const progressiveRatio = 2;

/** Both secants, N/mm: at a fifth of the usable compression, and over the whole of it. */
export function secantsOf(curve: StopCurve): { readonly early: number; readonly whole: number } {
  return { early: secantAt(curve, earlyShare), whole: secantAt(curve, 1) };
}

/**
 * Progressive: the secant over the whole δu is at least twice the secant at 0.2·δu. Three published
 * curves of jounce stops reach 1.9 to 19; the 2 is common practice.
 */
export function isProgressive(curve: StopCurve): boolean {
  const { early, whole } = secantsOf(curve);
  return whole >= progressiveRatio * early;
}

/** Force per compression at a share of the usable compression, N/mm. */
function secantAt(curve: StopCurve, share: number): number {
  const x = share * curve.usableCompressionMm;
  return curve.force(x) / x;
}
