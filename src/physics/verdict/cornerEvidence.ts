import * as messages from "../../words/compiled/physics/verdict.ts";
import type { CornerPlace } from "../budget/cornerPlaces.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { Fitment, Interval, LimitKind, UseRules } from "../fitment.ts";
import { layoutRegistry, type RegisteredLayout } from "../layouts/geometryRegistry.ts";
import { readingName } from "../readingNames.ts";
import type { QuantityId, ReadingId } from "../readings/readingId.ts";
import type { RoadTravel } from "../road/roadTravel.ts";
import { capital, type Message, type Quantity, type Sentence, type Words } from "../sentence.ts";
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
export function nameIn(evidence: CornerEvidence, id: QuantityId): Words {
  return readingName(id, limitKindOf(evidence, id));
}

function limitKindOf(evidence: CornerEvidence, id: QuantityId): LimitKind | undefined {
  const { corner } = evidence.corner;
  return corner.limits.find((_, index) => id === `${corner.side}.limits.${index}`)?.kind;
}

/** Share of draws outside the layout's reach from which nothing is decided. */
export const mostOutsideShare = 0.05;

/** What to do about a cause of doubt: the reading to take again or at all, and the words. */
export interface DoubtRemedy {
  readonly reading: QuantityId;
  /** A clause that begins with its verb: "re-measure the left gap, more closely if you can". */
  readonly words: Words;
}

function asked({ first, ask }: NonNullable<RegisteredLayout["closer"]>): DoubtRemedy {
  return { reading: first, words: ask };
}

/** What to do about the reading, or other cause, that doubt comes from. */
export function remedyOf(evidence: CornerEvidence, cause: QuantityId): DoubtRemedy {
  const { side } = evidence.corner.corner;
  const { layout } = evidence.fitment;
  const { closer } = layoutRegistry[layout.kind];
  const byHand: DoubtRemedy = {
    reading: handReading(evidence, "block"),
    words: messages.haveWholeTravelFound,
  };
  switch (cause) {
    case "wheelPerOuter":
      return closer === null || layout.armRole === "underStrut" ? byHand : asked(closer);
    case "linkage":
      // Of two arms it is κ that they would narrow.
      return closer !== null && !closer.ofTwoArms && evidence.corner.linkage === closer.from
        ? asked(closer)
        : byHand;
    case `${side}.linkage`:
      return {
        ...byHand,
        words: messages.findWheelTravelBy,
      };
    case "stop.usableCompressionMm":
      return {
        reading: cause,
        words: messages.askStopsMakerFor,
      };
    case `${side}.settle`:
      return {
        reading: `${side}.liftedHeight`,
        words: messages.liftSideAndLet({ side }),
      };
    default: {
      const name = nameIn(evidence, cause);
      const words = cause.startsWith("ride.")
        ? messages.findAgainMoreClosely({ name })
        : messages.reMeasureMoreClosely({ name });
      return { reading: cause, words };
    }
  }
}

function handReading({ fitment, corner }: CornerEvidence, part: "stop" | "block"): ReadingId {
  const way = fitment.fullTravel?.measure === "hubToArch" ? "heightToArch" : "wheelTravel";
  return `fullTravel.${corner.corner.side}.${part}.${way}`;
}

/** What lies behind most of the doubt; where the stop stands, if nothing stands out. */
export function mostDoubtedCause(evidence: CornerEvidence, about: keyof CornerDoubt): QuantityId {
  const { places } = evidence.corner;
  return evidence.doubt[about][0]?.reading ?? (places.all[places.stands] as CornerPlace).id;
}

/** The reading to take again, or at all, about most of the doubt. */
export function mostDoubted(evidence: CornerEvidence, about: keyof CornerDoubt): QuantityId {
  return remedyOf(evidence, mostDoubtedCause(evidence, about)).reading;
}

/** Causes of doubt that are told apart from a reading. */
const causeWords: Readonly<Record<string, Message>> = {
  wheelPerOuter: messages.howWheelMovesWith,
  linkage: messages.computedTravelItself,
  settle: messages.frictionInSuspension,
  usableCompressionMm: messages.howMuchStopsOf,
};

/** " Re-measure …, more closely if you can: 62 % of the margin of error comes from it." */
export function takeAgain(evidence: CornerEvidence, about: keyof CornerDoubt): Sentence {
  const first = evidence.doubt[about][0];
  const cause = mostDoubtedCause(evidence, about);
  const remedy = capital(remedyOf(evidence, cause).words);
  const share: Quantity | undefined = first && { kind: "share", value: first.share };
  const named = causeWords[cause.slice(cause.lastIndexOf(".") + 1)];
  return [
    messages.ofMarginOfError({
      remedy,
      hasShare: share !== undefined,
      share,
      noNamed: named === undefined,
      named,
    }),
  ];
}
