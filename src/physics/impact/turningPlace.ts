/** A switch's measure along a step: positive while the switch agrees. */
export interface MeasureAlongStep {
  /** The measure at a share of the step, 0 … 1. */
  standing(theta: number): number;
  /** True where the measure taken last is as good as 0. */
  isTurning(): boolean;
}

/** Rounds of false position for the place where a switch turns. */
const mostRounds = 60;
/** Shares of a step nearer than this are one place. */
const samePlace = 1e-12;
/** Where the measure is not positive this near to the start either, the switch turns at the start. */
const nextToStart = 1e-6;

/**
 * Where a measure that is not positive at `upTo` ceases to be: bracketed by halving back from `upTo`,
 * then by false position with the Illinois rule, which halves the value of an end that stays.
 *
 * @returns share of the step, 0 … `upTo`; 0 where the measure is nowhere seen positive
 * Source: Dowell & Jarratt, BIT 11 (1971) 168 (from memory).
 */
export function turningPlace(measure: MeasureAlongStep, upTo: number): number {
  let low = 0;
  let atLow = measure.standing(0);
  let high = upTo;
  let atHigh = measure.standing(upTo);
  for (let back = upTo / 2; !(atLow > 0); back /= 2) {
    if (back < nextToStart) return 0;
    const standing = measure.standing(back);
    if (standing > 0) {
      low = back;
      atLow = standing;
    } else {
      high = back;
      atHigh = standing;
    }
  }
  let lowStayed = false;
  let highStayed = false;
  for (let round = 0; round < mostRounds && high - low > samePlace; round++) {
    const middle = (atHigh * low - atLow * high) / (atHigh - atLow);
    const standing = measure.standing(middle);
    if (measure.isTurning()) return middle;
    if (standing > 0) {
      low = middle;
      atLow = standing;
      if (highStayed) atHigh /= 2;
      highStayed = true;
      lowStayed = false;
    } else {
      high = middle;
      atHigh = standing;
      if (lowStayed) atLow /= 2;
      lowStayed = true;
      highStayed = false;
    }
  }
  return high;
}
