import type { QuantityId } from "../readings/readingId.ts";
import { RandomSource } from "../uncertainty/randomSource.ts";
import { sureEnough, unlikelyEnough } from "../verdict/decisions.ts";
import type { Margin } from "./margin.ts";
import { isBetween } from "./openQuestions.ts";
import type { AfterReading } from "./readAgain.ts";

/** Readings taken again, by id, with what is then left in doubt about each. */
export type TakenAgain = ReadonlyMap<QuantityId, AfterReading>;

/** What is expected once some readings were taken again. */
export interface RemeasureOutcome {
  /** Half the 95 % interval then left of each margin, mm. */
  readonly halfWidths: readonly number[];
  /** Chance that each margin's question is then decided, 0 … 1. */
  readonly settled: readonly number[];
  /** Chance that the verdict is then settled: every question is, or one has failed. */
  readonly verdict: number;
}

const samples = 10_000;
const seed = 20_080_101;

/**
 * The doubt about some margins as a sum of the readings' own doubts, each times its first-order slope
 * (JCGM 100:2008, 5.1.2). The parts keep their shapes, rectangular and normal, and are summed draw by
 * draw (JCGM 101:2008, clause 7), since a few rectangular parts are no normal distribution.
 *
 * What is expected of a reading taken again: its new mean moves by `AfterReading.shift`, which moves
 * the margin by slope × shift; about there the narrower doubt is left, and conformity is decided by
 * its probability (JCGM 106:2012, clause 8). The share of the shifts after which that probability is
 * no longer between the limits is the chance that the question is settled.
 *
 * Fails where the margin bends within the readings' ±: at the lesser of two limits that touch almost
 * together, near the end of the layout's reach, for steep or long arms with a wide ±. `describes` tells,
 * and `outcomeByDraws` then takes the place of this.
 */
export class LinearDoubt {
  readonly #margins: readonly Margin[];
  readonly #blocked: boolean;
  readonly #totals: readonly Float64Array[];

  /** @param blocked something besides these margins keeps the verdict open */
  constructor(margins: readonly Margin[], blocked: boolean) {
    this.#margins = margins;
    this.#blocked = blocked;
    this.#totals = margins.map(({ parts }) => {
      const total = new Float64Array(samples);
      for (const { reading, slope } of parts) {
        addDoubt(total, reading.id, slope, reading.halfWidth, reading.standardError);
      }
      return total;
    });
  }

  /** Half the 95 % interval of one margin as it is now, mm. */
  halfWidth(index: number): number {
    return halfWidthOf(Float64Array.from(this.#totals[index] as Float64Array).sort());
  }

  /** Probability that one margin is kept as it is now. */
  probability(index: number): number {
    const { middle } = this.#margins[index] as Margin;
    let kept = 0;
    for (const doubt of this.#totals[index] as Float64Array) if (middle + doubt >= 0) kept++;
    return kept / samples;
  }

  /**
   * Do the lines agree with the draws through the curved formulas? Within a tenth of the interval, 0.03
   * of the probability, and about whether the question is open at all.
   */
  describes(index: number): boolean {
    const margin = this.#margins[index] as Margin;
    if (!margin.inReach) return false;
    const width = this.halfWidth(index);
    const { interval, probability } = margin;
    const drawn = interval === null ? width : (interval[1] - interval[0]) / 2;
    const own = this.probability(index);
    return (
      Math.abs(width - drawn) <= 0.1 * drawn &&
      (probability === null ? isBetween(own) : Math.abs(own - probability) <= 0.03)
    );
  }

  outcome(taken: TakenAgain): RemeasureOutcome {
    const states = this.#margins.map((margin, index) => this.#after(margin, index, taken));
    let verdict = 0;
    for (let draw = 0; draw < samples; draw++) {
      const failed = states.some(({ state }) => state[draw] === -1);
      const open = states.some(({ state }) => state[draw] === 0);
      if (failed || (!open && !this.#blocked)) verdict++;
    }
    return {
      halfWidths: states.map(({ halfWidth }) => halfWidth),
      settled: states.map(
        ({ state }) => state.reduce((sum, each) => sum + Math.abs(each), 0) / samples,
      ),
      verdict: verdict / samples,
    };
  }

  /** Of each shift drawn: 1 kept, −1 not kept, 0 still open. */
  #after(
    { parts, middle }: Margin,
    index: number,
    taken: TakenAgain,
  ): { readonly state: Int8Array; readonly halfWidth: number } {
    const left = Float64Array.from(this.#totals[index] as Float64Array);
    const shift = new Float64Array(samples);
    for (const { reading, slope } of parts) {
      const after = taken.get(reading.id);
      if (after === undefined) continue;
      addDoubt(left, reading.id, -slope, reading.halfWidth, reading.standardError);
      addDoubt(left, reading.id, slope, after.halfWidth, after.standardError);
      after.shift.halfWidths.forEach((halfWidth, place) => {
        addDoubt(shift, `${reading.id} shift ${place}`, slope, halfWidth, 0);
      });
      addDoubt(shift, `${reading.id} shift`, slope, 0, after.shift.standardDeviation);
    }
    left.sort();
    const halfWidth = halfWidthOf(left);
    const low = percentile(left, unlikelyEnough);
    const high = percentile(left, sureEnough);
    const state = new Int8Array(samples);
    for (let draw = 0; draw < samples; draw++) {
      const moved = middle + (shift[draw] as number);
      if (moved >= -low) state[draw] = 1;
      else if (moved <= -high) state[draw] = -1;
    }
    return { state, halfWidth };
  }
}

/** Adds slope × (rectangular ± halfWidth + normal) from the streams of this name. */
function addDoubt(
  out: Float64Array,
  name: string,
  slope: number,
  halfWidth: number,
  standardError: number,
): void {
  const part = new Float64Array(out.length);
  if (halfWidth > 0) RandomSource.stream(seed, name).addRectangular(part, halfWidth);
  if (standardError > 0)
    RandomSource.stream(seed, `${name} scatter`).addNormal(part, standardError);
  for (let index = 0; index < out.length; index++) {
    out[index] = (out[index] as number) + slope * (part[index] as number);
  }
}

function halfWidthOf(sorted: Float64Array): number {
  return (percentile(sorted, 0.975) - percentile(sorted, 0.025)) / 2;
}

/** Between two ranks in proportion. */
function percentile(sorted: Float64Array, probability: number): number {
  const place = probability * (sorted.length - 1);
  const rank = Math.floor(place);
  const below = sorted[rank] as number;
  return below + (place - rank) * ((sorted[rank + 1] ?? below) - below);
}
