import { type Sentence, spacer } from "../../physics/sentence.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/records/review.ts";
import { dateText } from "../check/checkName.ts";
import type { Advice } from "../check/checkRecord.ts";
import type { LengthUnit } from "../entry/units.ts";
import { stopInFull } from "../pack/stopFacts.ts";

/** "Tall firm, HL-3130, revision B, spacer 15.0 mm": what an answer prescribed. */
export function adviceSentence({ part }: Advice): Sentence {
  if (part === undefined) return [messages.noPartPrescribed];
  const { partNumber, change, spacerMm: value, stopRateClass } = part;
  if (change === "nothing") return [messages.nothingToChange({ stopInFull: stopInFull(part) })];
  const scaled = partNumber === undefined && change !== "spacer";
  const stiffness: Sentence = [
    messages.classWord({
      stopRateClass: { kind: "stiffnessClass", value: stopRateClass },
    }),
  ];
  const under: Sentence = [messages.spacer({ value: spacer(value) })];
  return [stopInFull(part), ...(scaled ? stiffness : []), ...(value > 0 ? under : [])];
}

export function adviceWords(advice: Advice, unit: LengthUnit): string {
  return sentenceText(adviceSentence(advice), unit);
}

/** When it was shown, for which side where it was one, and by which parts library. */
export function adviceGiven({ at, sides: [side, other], pack, edition }: Advice): string {
  const library = pack === undefined ? "" : messages.partsLibrary({ pack });
  return [
    messages.isSideSelectTrueSide({
      at: dateText(at),
      isSide: Boolean(side !== undefined && other === undefined),
      side,
      library,
      isLibrary: Boolean(library === "" || edition === undefined),
      edition,
    }),
  ].join("");
}
