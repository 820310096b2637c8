import type { Interval, Side } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/ladder.ts";
import type { Ladder } from "./ladderRungs.ts";

export function lengthText(mm: number, unit: LengthUnit): string {
  return quantityText({ kind: "length", value: mm }, unit);
}

/** The same without its unit. */
export function bareLength(mm: number, unit: LengthUnit): string {
  return lengthText(mm, unit).replace(/\s(mm|in)$/, "");
}

/** "54.7 to 61.1 mm". */
export function bandText([low, high]: Interval, unit: LengthUnit): string {
  return messages.to2({ bareLength: bareLength(low, unit), high: lengthText(high, unit) });
}

/** The ladder told in words, for those who do not see it. */
export function ladderWords(side: Side, { rungs, sagMm }: Ladder, unit: LengthUnit): string {
  const told = (shift: number) =>
    rungs
      .map(({ words, travelMm, band }) =>
        messages.after({
          words,
          travelMm: lengthText(travelMm - shift, unit),
          band: band ? ` (95 %: ${bandText([band[0] - shift, band[1] - shift], unit)})` : "",
        }),
      )
      .join(", ");
  const loaded =
    sagMm === null
      ? messages.loadedNotKnown
      : sagMm === 0
        ? messages.loadedSameNoPayload
        : messages.loadedStandingLower({ sagMm: lengthText(sagMm, unit), sagMm2: told(sagMm) });
  return messages.left2({ side, told: told(0), loaded });
}
