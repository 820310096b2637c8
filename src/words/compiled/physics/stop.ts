// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const predictedHitsWereChecked: string = "Predicted hits were checked on simulated stops, not on real ones.";
export const rowOfStopsDamping: string = "A row of the stop's damping is not a usable number.";
export const stopsDampingCannotBe: string = "The stop's damping cannot be below zero.";
export const compressionInStopsDamping: string = "The compression in the stop's damping table must rise from row to row.";
export const k2K1: string = "k2 / k1, progressive if 2 or more";
export const stopsRestLossIs: string = "The stop's rest loss is a share of its force, from 0 to 1. Read the test of the stop again.";
export const shareOfStopsForce: string = "The share of the stop's force that remains at rest must be above 0 and at most 1. Read the test of the stop again.";
export const fadingPartOfStops: string = "A fading part of the stop's force needs a time above 0 and a share of 0 or more. Read the test of the stop again.";
export const checkFStaticAt: string = "check: F_static at the greatest compression";
export const checkAreaUnderStatic: string = "check: area under the static curve to the greatest compression";
export const usableCompressionOfStop: string = "The usable compression of the stop must be above zero. Look it up again.";
export const stopCannotBePressed = (d: { usable: string | number }): string => "The stop cannot be pressed by " + d.usable + " when it is no taller than that. Re-measure its free height.";
export const stopHasNoForce: string = "The stop has no force curve. Give at least one tested point.";
export const pointOfStopsForce: string = "A point of the stop's force curve is not a usable number.";
export const stopsForceCurveMust = (d: { depth: string | number }): string => "The stop's force curve must rise: at " + d.depth + " compression or force is no greater than at the point before it.";
export const nNearestWholeNumber = (d: { firstStep: string | number; lastStep: string | number }): string => "n = the nearest whole number, " + d.firstStep + " to " + d.lastStep;
export const classR5N: string = "class = R5(n), the preferred number for 10^(n/5)";
