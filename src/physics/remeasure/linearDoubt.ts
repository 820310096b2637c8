import type { QuantityId } from "../readings/readingId.ts";
import { sureEnough, unlikelyEnough } from "../verdict/decisions.ts";
import { addDoubt, decidedBy, halfWidthOf, keptShare, percentile } from "./doubtDraws.ts";
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

/** The doubt about one margin, drawn. */
export class MarginDoubt {
  readonly margin: Margin;
  readonly #total = new Float64Array(samples);

  constructor(margin: Margin) {
    this.margin = margin;
    for (const { reading, slope } of margin.parts) {
      addDoubt(this.#total, reading.id, slope, reading.halfWidth, reading.standardError);
    }
  }

  /** Half the 95 % interval as it is now, mm. */
  halfWidth(): number {
    return halfWidthOf(Float64Array.from(this.#total).sort());
  }

  /** Probability that the margin is kept as it is now. */
  probability(): number {
    return keptShare(this.#total, this.margin.middle);
  }

  /**
   * Do the lines agree with the draws through the curved formulas? Within a tenth of the interval, 0.03
   * of the probability, and about whether the question is open at all.
   */
  describes(): boolean {
    const { inReach, interval, probability } = this.margin;
    if (!inReach) return false;
    const width = this.halfWidth();
    const drawn = interval === null ? width : (interval[1] - interval[0]) / 2;
    const own = this.probability();
    return (
      Math.abs(width - drawn) <= 0.1 * drawn &&
      (probability === null ? isBetween(own) : Math.abs(own - probability) <= 0.03)
    );
  }

  /** Of each shift drawn: 1 kept, −1 not kept, 0 still open. */
  after(taken: TakenAgain): { readonly state: Int8Array; readonly halfWidth: number } {
    const { parts, middle } = this.margin;
    const left = Float64Array.from(this.#total);
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
    const low = percentile(left, unlikelyEnough);
    const high = percentile(left, sureEnough);
    return { state: decidedBy(shift, middle, -low, -high), halfWidth: halfWidthOf(left) };
  }
}

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
 * together, near the end of the layout's reach, for steep or long arms with a wide ±. `describes` tells it of each margin,
 * and `outcomeByDraws` then takes the place of this.
 */
export class LinearDoubt {
  readonly margins: readonly MarginDoubt[];
  readonly #blocked: boolean;

  /** @param blocked something besides these margins keeps the verdict open */
  constructor(margins: readonly Margin[], blocked: boolean) {
    this.margins = margins.map((margin) => new MarginDoubt(margin));
    this.#blocked = blocked;
  }

  outcome(taken: TakenAgain): RemeasureOutcome {
    const states = this.margins.map((margin) => margin.after(taken));
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
}
