import type { CornerAssessment } from "../../physics/fitment.ts";
import type { CornerTravel, TravelMoment } from "../../physics/travel/index.ts";
import { quantityText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sideWords } from "../assessment/stateWords.ts";
import { limitWords, type TravelSpan } from "./travelMarks.ts";

/** As the answer above the picture has it: no two numbers for one thing. */
export function lengthText(mm: number, unit: LengthUnit): string {
  return quantityText({ kind: "length", value: mm }, unit, { coarse: true });
}

export function forceText(newtons: number, unit: LengthUnit): string {
  return quantityText({ kind: "force", value: newtons }, unit);
}

/** Past full compression a test says only that the force is more. */
export function stopForceText(
  { usableCompressionMm, fullForceN }: CornerTravel,
  { compressionMm, stopForceN }: TravelMoment,
  unit: LengthUnit,
): string {
  return compressionMm > usableCompressionMm + justTouching
    ? `over ${forceText(fullForceN, unit)}`
    : forceText(stopForceN, unit);
}

export function ratioText(ratio: number): string {
  return quantityText({ kind: "ratio", value: ratio }, "mm");
}

/** Less than any tape shows, mm. */
const justTouching = 0.05;

/** "Gap 12.3 mm", "Pressed by 4.0 mm". */
export function gapWords(
  { gapMm, compressionMm }: { readonly gapMm: number; readonly compressionMm: number },
  unit: LengthUnit,
): { readonly name: string; readonly text: string } {
  return compressionMm > justTouching
    ? { name: "Pressed by", text: lengthText(compressionMm, unit) }
    : { name: "Gap", text: lengthText(gapMm, unit) };
}

/** Where the wheel is, by the name of the place where it has one. */
export function placeWords(span: TravelSpan, travelMm: number, unit: LengthUnit): string {
  const here = span.marks.find((mark) => Math.abs(mark.travelMm - travelMm) < 0.05);
  const travel =
    travelMm < -0.05
      ? `${lengthText(-travelMm, unit)} down from ride`
      : `${lengthText(Math.max(0, travelMm), unit)} up from ride`;
  return here ? `${here.words}: ${travel}` : travel;
}

/** One corner's travel told, for who does not see it. */
export function travelSentence(
  assessed: CornerAssessment,
  travel: CornerTravel,
  span: TravelSpan,
  unit: LengthUnit,
): string {
  const places = span.marks
    .filter(({ id }) => id !== "ride")
    .map(({ words, travelMm }) => `${words.toLowerCase()} at ${lengthText(travelMm, unit)}`);
  const { gapMm, compressionMm } = travel.at(0);
  const stands =
    compressionMm > justTouching
      ? `At ride the stop is pressed by ${lengthText(compressionMm, unit)}.`
      : `At ride the stop's gap is ${lengthText(gapMm, unit)}.`;
  const early = span.fullNotReached
    ? ` The travel ends there, ${limitWords[assessed.hardLimit ?? "other"]}, before the stop is fully compressed.`
    : "";
  const none = assessed.wheelTravelToHardLimitMm === null ? " No clearance was measured." : "";
  return `${sideWords[assessed.side]}, drawn to scale. ${stands} Wheel travel up from ride: ${places.join(", ")}.${early}${none}`;
}
