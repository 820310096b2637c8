import type { CornerBudget } from "../budget/travelBudget.ts";
import type { Fitment, Interval, LimitKind, UseRules } from "../fitment.ts";
import type { ReadingId } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { RoadTravel } from "../road/roadTravel.ts";
import type { Sentence } from "../sentence.ts";
import type { CornerDoubt } from "../uncertainty/cornerDoubt.ts";
import type { CornerDraws } from "../uncertainty/cornerDraws.ts";
import type { MissingRideData } from "./missingRideData.ts";

/** All that the checks of one corner are decided from. */
export interface CornerEvidence {
  readonly fitment: Fitment;
  readonly rules: UseRules;
  readonly corner: CornerBudget;
  readonly road: RoadTravel;
  readonly draws: CornerDraws;
  /** P(z_c ≥ z_need), laden and unladen; null where z_need is not known. */
  readonly contactBeyond: { readonly laden: number | null; readonly unladen: number | null };
  readonly doubt: CornerDoubt;
  readonly missing: readonly MissingRideData[];
  /** Duty carry: compression under load, mm; null where not known. */
  readonly loadedCompressionMm: number | null;
  /** The same within the ± of an estimated curve, [least, greatest]; null where it was tested. */
  readonly estimatedCompressionMm: Interval | null;
}

/** A reading of this corner by its name, a hard limit by its kind. */
export function nameIn(evidence: CornerEvidence, id: ReadingId): string {
  return readingName(id, limitKindOf(evidence, id));
}

function limitKindOf(evidence: CornerEvidence, id: ReadingId): LimitKind | undefined {
  const { corner } = evidence.corner;
  return corner.limits.find((_, index) => id === `${corner.side}.limits.${index}`)?.kind;
}

/** Share of draws outside the layout's reach from which nothing is decided. */
export const mostOutsideShare = 0.05;

/** The reading behind most of the doubt; the gap where no reading stands out. */
export function mostDoubted(evidence: CornerEvidence, about: keyof CornerDoubt): ReadingId {
  return evidence.doubt[about][0]?.reading ?? `${evidence.corner.corner.side}.gap`;
}

/** "Measure … again: most of the doubt (62 %) comes from it." */
export function takeAgain(evidence: CornerEvidence, about: keyof CornerDoubt): Sentence {
  const first = evidence.doubt[about][0];
  const id = mostDoubted(evidence, about);
  const verb = id.startsWith("ride.") ? "Find" : "Measure";
  const name = nameIn(evidence, id);
  if (first === undefined) return [` ${verb} ${name} again.`];
  return [
    ` ${verb} ${name} again, or more closely: `,
    { kind: "share", value: first.share },
    " of the doubt comes from it.",
  ];
}
