import * as messages from "../../words/compiled/screens/answer.ts";
/** A probability in words; the words change where the decisions do (0.95 and 0.05) and between. */
export function probabilityWords(probability: number): string {
  if (probability >= 0.999) return messages.almostCertain;
  if (probability >= 0.95) return messages.veryLikely;
  if (probability >= 0.75) return messages.likely;
  if (probability > 0.25) return messages.couldGoEitherWay;
  if (probability > 0.05) return messages.unlikely;
  if (probability > 0.001) return messages.veryUnlikely;
  return messages.almostRuledOut;
}

/** Never "100 %" or "0 %": readings do not give certainty. */
export function probabilityNumber(probability: number): string {
  if (probability > 0.999) return messages.over999;
  if (probability < 0.001) return messages.under01;
  return `${Number((100 * probability).toFixed(1))}\u00a0%`;
}
