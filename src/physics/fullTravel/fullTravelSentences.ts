import * as messages from "../../words/compiled/physics/fullTravel.ts";
import type { Fitment, LimitKind } from "../fitment.ts";
import { readingName } from "../readingNames.ts";
import { isAngle } from "../readings/definitionOf.ts";
import { parseReadingId } from "../readings/readingId.ts";
import { capital, length, orList, type Quantity, type Sentence, type Words } from "../sentence.ts";
import type { ComparedCorner } from "./compareFullTravel.ts";
import { type MetPart, partTouches, type SuspectId } from "./fullTravelCheck.ts";
import type { Explanation } from "./likeliestWrong.ts";

/** Suspects with at least this share of the likeliest's likelihood can't be told apart from it. */
const tellsApart = 0.5;
const mostNamed = 3;

function limitKind(fitment: Fitment, id: SuspectId): LimitKind | undefined {
  const place = parseReadingId(id);
  if (place?.of !== "limit") return undefined;
  return fitment.corners.find(({ side }) => side === place.side)?.limits[place.index]?.kind;
}

/** "the left gap"; of the hand check "the travel where the tire touches", "the start of the hand check". */
export function suspectName(fitment: Fitment, id: SuspectId): Words {
  const [first, side = "", part = "", what] = id.split(".");
  if (first !== "fullTravel") return readingName(id, limitKind(fitment, id));
  if (what === "blockHeight") return messages.heightOfBlock({ side });
  return part === "atRide"
    ? messages.startOfHandCheck({ side })
    : messages.handCheckWhere({ part: partTouches[part as MetPart], side });
}

function quantity(id: SuspectId, value: number): Quantity {
  if (id.endsWith("wheelPerOuter")) return { kind: "count", value };
  return isAngle(id) ? { kind: "angle", value } : length(value);
}

const slipWords = {
  unit: messages.thatIsWhatIt,
  sign: messages.thatIsWhatItWould,
} as const;

/** The suspects that what was found can't tell apart, the likeliest first. */
export function likeliest({ explanations }: ComparedCorner): readonly Explanation<SuspectId>[] {
  const [first] = explanations;
  if (first === undefined) return [];
  return explanations.filter(({ share }) => share >= tellsApart * first.share).slice(0, mostNamed);
}

/**
 * What is likeliest wrong where hand and computed travel differ by more than their doubt, how far off
 * it would be, and what to take again. Null where they agree.
 */
export function likeliestSentence(fitment: Fitment, corner: ComparedCorner): Sentence | null {
  const [first, ...others] = likeliest(corner);
  if (first === undefined) return null;
  const name = suspectName(fitment, first.id);
  const begin: Sentence = first.explains
    ? [messages.isLikeliestWrong({ name: capital(name) })]
    : [messages.noSingleReadingExplains({ name })];
  const change: Sentence =
    first.wouldBe === null
      ? [
          messages.wheelWouldHaveBeen({
            change: length(Math.abs(first.change)),
            hasChange: first.change > 0,
          }),
        ]
      : [messages.itWouldHaveTo({ quantity: quantity(first.id, first.wouldBe) })];
  const slip = first.slip === null ? "" : slipWords[first.slip];
  const again = others.length === 0 ? "" : messages.orItIs({ names: names(fitment, others) });
  return [
    ...begin,
    ...change,
    messages.reMeasureIt({ slip, again, noOthers: others.length === 0, name }),
  ];
}

function names(fitment: Fitment, explanations: readonly Explanation<SuspectId>[]): Words {
  return orList(explanations.map(({ id }) => suspectName(fitment, id)));
}

/** Something harder than the stop that touches too early; no: before the stop, unsure: it may be. */
export interface HardContact {
  readonly state: "no" | "unsure";
  readonly sentence: Sentence;
}

/** What was found by hand that no verdict may pass over: something harder before the stop is done. */
export function hardContacts(corner: ComparedCorner): readonly HardContact[] {
  return corner.contacts.flatMap(({ part, afterFullStop, beforeStop }): HardContact[] => {
    const touches = capital(
      messages.touchesOnSide({ touches: partTouches[part], side: corner.side }),
    );
    if (beforeStop) {
      const sentence = [messages.beforeStopMeetsIts({ touches })];
      return [{ state: "no", sentence }];
    }
    if (afterFullStop === null || afterFullStop.state === "ok") return [];
    if (afterFullStop.state === "no") {
      const sentence = [
        messages.ofWheelTravelBefore({
          touches,
          leftMm: length(-afterFullStop.leftMm),
        }),
      ];
      return [{ state: "no", sentence }];
    }
    const sentence = [messages.tooCloseToFull({ touches })];
    return [{ state: "unsure", sentence }];
  });
}

/**
 * One line: how many contacts, how many beyond the doubt, what is likeliest wrong; without a fitment the
 * last is left to the sentence that follows.
 */
export function fullTravelLine(
  fitment: Fitment | null,
  corners: readonly ComparedCorner[],
): Sentence {
  const contacts = corners.flatMap((corner) => corner.contacts);
  const compared = contacts.filter(({ computed }) => computed !== null);
  const beyond = compared.filter(({ computed }) => computed?.agrees === false).length;
  const hard = corners.reduce((sum, corner) => sum + hardContacts(corner).length, 0);
  const wrong = corners.flatMap((corner) => likeliest(corner).slice(0, 1));
  const named = fitment === null ? "" : messages.likeliestWrong({ names: names(fitment, wrong) });
  const found = messages.contact({ contacts: contacts.length });
  const counted =
    compared.length === contacts.length
      ? found
      : messages.compared({ found, compared: compared.length });
  const verdict =
    beyond === 0
      ? compared.length === 0
        ? "."
        : messages.allAgreeWithinTheir
      : messages.beyondMarginOfError({ beyond, named });
  const hardWords = hard === 0 ? "" : messages.hardContactComes({ hard });
  return [messages.told({ counted, verdict, hardWords })];
}
