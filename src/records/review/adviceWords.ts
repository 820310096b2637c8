import { type Sentence, spacer } from "../../physics/sentence.ts";
import { dateText } from "../check/checkName.ts";
import type { Advice } from "../check/checkRecord.ts";
import { sentenceText } from "../entry/quantityText.ts";
import type { LengthUnit } from "../entry/units.ts";
import { stopInFull } from "../pack/stopFacts.ts";

/** "Tall firm, HL-3130, revision B, spacer 15.0 mm": what an answer prescribed. */
export function adviceSentence({ part }: Advice): Sentence {
  if (part === undefined) return ["no part prescribed"];
  const { partNumber, change, spacerMm: value, stopRateClass } = part;
  if (change === "nothing") return [`nothing to change, ${stopInFull(part)}`];
  const scaled = partNumber === undefined && change !== "spacer";
  const stiffness: Sentence = [", class ", { kind: "stiffnessClass", value: stopRateClass }];
  const under: Sentence = [", spacer ", spacer(value)];
  return [stopInFull(part), ...(scaled ? stiffness : []), ...(value > 0 ? under : [])];
}

export function adviceWords(advice: Advice, unit: LengthUnit): string {
  return sentenceText(adviceSentence(advice), unit);
}

/** When it was shown, for which side where it was one, and by which parts library. */
export function adviceGiven({ at, sides: [side, other], pack, edition }: Advice): string {
  const library = pack === undefined ? "" : `, parts library ${pack}`;
  return [
    dateText(at),
    side !== undefined && other === undefined ? `, ${side} side` : "",
    library,
    library === "" || edition === undefined ? "" : `, edition ${edition}`,
  ].join("");
}
