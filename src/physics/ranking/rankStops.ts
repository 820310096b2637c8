import type { Assessment, CheckId, Fitment, Side, State, Stop } from "../fitment.ts";
import type { Fault, Outcome } from "../outcome.ts";
import type { Sentence } from "../sentence.ts";

/** A stop that may be fitted instead of the one of the check. */
export interface Candidate {
  readonly id: string;
  readonly stop: Stop;
}

/** What is left at the worst corner; null where not known. Negative = short by so much. */
export interface Margins {
  /** Reserve beyond the wanted one, mm of wheel travel. */
  readonly reserveMm: number | null;
  /** Wheel travel to contact, loaded, beyond what the use needs, mm. Null for a stop made to carry. */
  readonly freeTravelMm: number | null;
  /** Below the acceleration cap in the hardest event, g. */
  readonly accelerationG: number | null;
  /** Usable compression left in the hardest event, share of δu. */
  readonly compressionShare: number | null;
}

/** What fails or is in doubt, on which side, and the check's own sentence. */
export interface Shortcoming {
  readonly check: CheckId;
  readonly state: State;
  readonly side: Side;
  readonly sentence: Sentence;
}

/** One stop, or one stop with a spacer, on the vehicle of the check. */
export interface RankedStop {
  readonly id: string;
  readonly name: string;
  /** mm under the stop; 0 = none. */
  readonly spacerMm: number;
  /** fits: verdict ok. nearly: nothing worse than care or unsure, or one check failing. */
  readonly group: "fits" | "nearly" | "doesNotFit";
  readonly verdict: State;
  readonly margins: Margins;
  readonly shortcomings: readonly Shortcoming[];
  /** As assessed, for charts side by side; null where it could not be: see `fault`. */
  readonly fitment: Fitment | null;
  readonly assessment: Assessment | null;
  readonly fault: Fault | null;
}

export interface RankProgress {
  readonly done: number;
  readonly total: number;
  /** Ranked since the last step; the order comes with the end. */
  readonly ranked: readonly RankedStop[];
}

export interface RankOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** Spacers come in steps of this, mm; 1 where absent. */
  readonly spacerStepMm?: number;
  readonly mostSpacerMm?: number;
}

/**
 * Every candidate on the vehicle of the check, with a spacer where it fails without and one helps.
 * Yields between events; `return()` stops it. Returns all, best first.
 */
export declare function rankStops(
  fitment: Fitment,
  candidates: readonly Candidate[],
  options?: RankOptions,
): Generator<RankProgress, readonly RankedStop[], void>;

/** The check's fitment with another stop on the same mount; error "stopPresses". */
export declare function fitmentWithStop(
  fitment: Fitment,
  stop: Stop,
  spacerMm?: number,
): Outcome<Fitment>;
