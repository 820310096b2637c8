import * as messages from "../../words/compiled/physics/stop.ts";
/**
 * What a hit faster than the test may be off by the choice of the law, 95 %, as shares of the figures:
 * found at four times the tested speed on simulated stops of one, two and many branches, and taken to grow
 * with the logarithm of the speed's ratio. 0 up to the tested speed.
 */
export function beyondTest(timesTested: number): {
  readonly peak: number;
  readonly leaving: number;
} {
  const decades = Math.log(Math.max(1, timesTested)) / Math.log(foundAt);
  return { peak: peakShare * decades, leaving: leavingShare * decades };
}

/** A hit from this many times the fastest row of the test on is an extrapolation that is told. */
export const fasterThanTested = 1.5;

const foundAt = 4;
const peakShare = 0.06;
const leavingShare = 0.1;

/** Stands wherever a predicted hit is shown, as long as no drop test from outside was compared. */
export const simulatedStops = messages.predictedHitsWereChecked;
