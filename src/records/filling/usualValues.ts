import * as messages from "../../words/compiled/records/filling.ts";
import type { Message } from "../../words/message.ts";
import type { ChoiceId, ChoiceValue } from "../check/choices.ts";

/*
 * Starting values for those who can't measure. All of them common practice, none from a published
 * source; each carries a ± wide enough to say so.
 */

/** ± of half an axle's weight as the weight on one wheel, as a share: left and right seldom agree better. */
export const halvingTolerance = 0.05;

/** What each of a choice stands for. */
type Chosen<Id extends ChoiceId> = readonly {
  readonly id: ChoiceValue<Id>;
  readonly value: number;
  readonly tol?: number;
  readonly words: Message;
}[];

export const payloadShares = [
  { id: "all", value: 1, words: messages.allOfItBehind },
  { id: "most", value: 0.75, words: messages.mostOfIt },
  { id: "half", value: 0.5, words: messages.halfOfItBetween },
  { id: "little", value: 0.25, words: messages.littleOfIt },
] as const satisfies Chosen<"payload.share">;

export const unsprungShares = {
  independent: { value: 0.12, tol: 0.04 },
  axle: { value: 0.2, tol: 0.06 },
} as const;

/** N/mm at the pressure that the tyre is used at. */
export const tyreRates = [
  { id: "car", value: 210, tol: 40, words: messages.carTire },
  { id: "light", value: 260, tol: 60, words: messages.lightTruckOrAll },
  { id: "heavy", value: 380, tol: 90, words: messages.heavyLoadTireAt },
] as const satisfies Chosen<"tyre.sort">;

/** Share of critical damping, mean of bump and rebound. */
export const dampingShares = [
  { id: "soft", value: 0.25, tol: 0.08, words: messages.softOrWorn },
  { id: "usual", value: 0.35, tol: 0.1, words: messages.asMostAre },
  { id: "firm", value: 0.5, tol: 0.12, words: messages.firmOrHeavyDuty },
] as const satisfies Chosen<"damping.share">;
