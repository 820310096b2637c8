import type { CheckId } from "../../../physics/fitment.ts";
import type { Spread } from "../../../records/findings/quantiles.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";

export const checkWords: { readonly [Each in CheckId]: string } = {
  clearance: messages.hardContactFirst,
  earlyContact: messages.touchesTooSoon,
  stiffness: messages.stiffness,
  balance: messages.sidesDiffer,
  plausible: messages.notPlausible,
};

/** "median 2.0, half of them 1.0 to 3.0". */
export function spreadWords(
  { n, median, quarter, threeQuarters }: Spread,
  words: (value: number) => string,
): string {
  if (n === 1) return words(median);
  return messages.medianHalfOfThem({
    words: words(median),
    words2: words(quarter),
    words3: words(threeQuarters),
  });
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
