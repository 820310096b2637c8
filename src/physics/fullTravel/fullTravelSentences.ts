import type { Fitment, LimitKind } from "../fitment.ts";
import { readingName } from "../readingNames.ts";
import { isAngle } from "../readings/definitionOf.ts";
import { capital, length, type Quantity, type Sentence } from "../sentence.ts";
import type { ComparedCorner } from "./compareFullTravel.ts";
import { type MetPart, partTouches, type SuspectId } from "./fullTravelCheck.ts";
import type { Explanation } from "./likeliestWrong.ts";

/** Suspects with at least this share of the likeliest's likelihood can't be told apart from it. */
const tellsApart = 0.5;
const mostNamed = 3;

function limitKind(fitment: Fitment, id: SuspectId): LimitKind | undefined {
  const [side, , index] = id.split(".");
  const corner = fitment.corners.find((each) => each.side === side);
  return corner?.limits[Number(index)]?.kind;
}

/** "the left gap"; of the hand check "the travel where the tire touches", "the start of the hand check". */
export function suspectName(fitment: Fitment, id: SuspectId): string {
  const [first, side, part = "", what] = id.split(".");
  if (first !== "fullTravel") return readingName(id, limitKind(fitment, id));
  if (what === "blockHeight") return `the height of the block, ${side}`;
  return part === "atRide"
    ? `the start of the hand check, ${side}`
    : `the hand check where ${partTouches[part as MetPart]}, ${side}`;
}

function quantity(id: SuspectId, value: number): Quantity {
  if (id.endsWith("wheelPerOuter")) return { kind: "count", value };
  return isAngle(id) ? { kind: "angle", value } : length(value);
}

const slipWords = {
  unit: " That is what it would be if inches and millimeters were mixed up.",
  sign: " That is what it would be with its sign reversed.",
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
    ? [`${capital(name)} is likeliest wrong.`]
    : [`No single reading explains it; ${name} comes nearest.`];
  const change: Sentence =
    first.wouldBe === null
      ? [
          " The wheel would have been ",
          length(Math.abs(first.change)),
          ` ${first.change > 0 ? "below" : "above"} its ride height where the travel was counted from.`,
        ]
      : [" It would have to be ", quantity(first.id, first.wouldBe), "."];
  const slip = first.slip === null ? "" : slipWords[first.slip];
  const again = others.length === 0 ? "" : ` Or it is ${names(fitment, others)}.`;
  return [
    ...begin,
    ...change,
    `${slip}${again} ${others.length === 0 ? "Re-measure it." : `Re-measure these, ${name} first.`}`,
  ];
}

function names(fitment: Fitment, explanations: readonly Explanation<SuspectId>[]): string {
  return explanations.map(({ id }) => suspectName(fitment, id)).join(", or ");
}

/** Something harder than the stop that touches too early; no: before the stop, unsure: it may be. */
export interface HardContact {
  readonly state: "no" | "unsure";
  readonly sentence: Sentence;
}

/** What was found by hand that no verdict may pass over: something harder before the stop is done. */
export function hardContacts(corner: ComparedCorner): readonly HardContact[] {
  return corner.contacts.flatMap(({ part, afterFullStop, beforeStop }): HardContact[] => {
    const touches = capital(`${partTouches[part]}, ${corner.side}`);
    if (beforeStop) {
      const sentence = [`${touches}, before the stop meets its pad. Do not drive it like this.`];
      return [{ state: "no", sentence }];
    }
    if (afterFullStop === null || afterFullStop.state === "ok") return [];
    if (afterFullStop.state === "no") {
      const sentence = [
        `${touches}, `,
        length(-afterFullStop.leftMm),
        " of wheel travel before the stop is fully compressed. Do not drive it like this.",
      ];
      return [{ state: "no", sentence }];
    }
    const sentence = [
      `${touches}, too close to full compression of the stop to tell which comes first.`,
    ];
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
  const named = fitment === null ? "" : `, likeliest wrong ${names(fitment, wrong)}`;
  const found = `${contacts.length} ${contacts.length === 1 ? "contact" : "contacts"} by hand`;
  const counted =
    compared.length === contacts.length ? found : `${found}, ${compared.length} compared`;
  const verdict =
    beyond === 0
      ? compared.length === 0
        ? "."
        : ": all agree within their margins of error."
      : `: ${beyond} beyond the margin of error${named}.`;
  const hardWords =
    hard === 0
      ? ""
      : ` ${hard} hard ${hard === 1 ? "contact comes" : "contacts come"} before or near full compression of the stop.`;
  return [`${counted}${verdict}${hardWords}`];
}
