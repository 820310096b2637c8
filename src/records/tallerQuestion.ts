import type { Assessment, Interval, LimitKind, Side, Use } from "../physics/fitment.ts";
import type { Outcome, ReadingId } from "../physics/outcome.ts";
import type { Sentence } from "../physics/sentence.ts";
import type { CheckRecord, TypedReading } from "./checkRecord.ts";
import type { Pack } from "./pack.ts";
import type { PayloadWord } from "./payloadWords.ts";

/** The five readings of a customer with a tape measure; any may be left out but the payload. */
export interface TallerReadings {
  /** Wheel centre to arch, mm. Without it the platform is taken as standing as usual. */
  readonly rideHeight?: TypedReading;
  /** Stop to pad along the stop's axis, mm. */
  readonly gap?: TypedReading;
  /** Free height of the stop that is fitted, mm. */
  readonly stopHeight?: TypedReading;
  /** Clearance over the tyre, or rod left on the damper, mm. */
  readonly clearance?: {
    readonly kind: Extract<LimitKind, "tyre" | "damper">;
    readonly reading: TypedReading;
  };
  readonly payload: PayloadWord;
}

export interface TallerQuestion {
  readonly platformId: string;
  readonly use: Use;
  readonly side?: Side;
  readonly readings: TallerReadings;
  /** New UUID and time of the record: the caller's, so that this stays pure. */
  readonly id: string;
  readonly createdAt: string;
  readonly label?: string;
}

export interface TallerAnswer {
  readonly answer: "yes" | "no" | "cantTell";
  /** Extra height of a stop of the same build, mm, with its 95 % range; negative = height to spare. */
  readonly tallerMm: number | null;
  readonly rangeMm: Interval | null;
  readonly spacerMm: number | null;
  readonly spacerRangeMm: Interval | null;
  /** False: a taller stop is wanted, but would be met too early. Null: not known. */
  readonly heightFits: boolean | null;
  /** One to four sentences: the answer's reasons in order. */
  readonly why: readonly Sentence[];
  /** The reading that would settle it, and how; null where the answer is sure. */
  readonly settle: { readonly reading: ReadingId; readonly sentence: Sentence } | null;
  /** Which cautions go with it, as in the guided check. */
  readonly cautionsFor: "level" | "raised";
  /** What the record takes from the platform or assumes, in plain words. */
  readonly assumed: readonly Sentence[];
}

/** An ordinary check record, to be kept, sent, assessed (`fitmentOf`) and carried on as a full check. */
export declare function tallerRecord(
  pack: Pack,
  question: TallerQuestion,
): Outcome<{ readonly record: CheckRecord; readonly assumed: readonly Sentence[] }>;

/** The answer from the static or complete assessment of that record. */
export declare function tallerAnswer(
  record: CheckRecord,
  assessment: Assessment,
  assumed: readonly Sentence[],
): TallerAnswer;
