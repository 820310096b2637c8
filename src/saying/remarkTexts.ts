import type { LengthUnit } from "../records/entry/units.ts";
import type { PackTest } from "../records/pack/pack.ts";
import { isKnownSentence } from "./modelUnits.ts";
import { sentenceText } from "./sentenceText.ts";

/**
 * What was recognised in a kept test's file, in the person's units. Tests of older versions, and of later
 * ones with quantities unknown here, tell it in mm and N.
 */
export function remarkTexts(
  { remarks, remarkSentences }: PackTest,
  unit: LengthUnit,
): readonly string[] {
  return remarkSentences?.every(isKnownSentence)
    ? remarkSentences.map((sentence) => sentenceText(sentence, unit))
    : remarks;
}
