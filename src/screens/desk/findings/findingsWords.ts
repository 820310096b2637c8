import type { CheckId } from "../../../physics/fitment.ts";
import type { Spread } from "../../../records/findings/quantiles.ts";

export const checkWords: { readonly [Each in CheckId]: string } = {
  clearance: "Hard contact first",
  earlyContact: "Touches too soon",
  stiffness: "Stiffness",
  balance: "Sides differ",
  plausible: "Not plausible",
};

/** "median 2.0, half of them 1.0 to 3.0". */
export function spreadWords(
  { n, median, quarter, threeQuarters }: Spread,
  words: (value: number) => string,
): string {
  if (n === 1) return words(median);
  return `median ${words(median)}, half of them ${words(quarter)} to ${words(threeQuarters)}`;
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
