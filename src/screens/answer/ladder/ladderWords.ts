import type { Interval, Side } from "../../../physics/fitment.ts";
import { quantityText } from "../../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
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
  return `${bareLength(low, unit)} to ${lengthText(high, unit)}`;
}

/** The ladder told in words, for those who do not see it. */
export function ladderWords(side: Side, { rungs, sagMm }: Ladder, unit: LengthUnit): string {
  const told = (shift: number) =>
    rungs
      .map(
        ({ words, travelMm, band }) =>
          `${words} after ${lengthText(travelMm - shift, unit)}${
            band ? ` (95 %: ${bandText([band[0] - shift, band[1] - shift], unit)})` : ""
          }`,
      )
      .join(", ");
  const loaded =
    sagMm === null
      ? "Loaded: not known."
      : sagMm === 0
        ? "Loaded: the same, no payload entered."
        : `Loaded, standing ${lengthText(sagMm, unit)} lower: ${told(sagMm)}.`;
  return `${side === "left" ? "Left" : "Right"}, wheel travel up from ride: ${told(0)}. ${loaded}`;
}
