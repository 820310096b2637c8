import type { CornerAssessment } from "../../physics/fitment.ts";
import { commaList } from "../../physics/sentence.ts";
import type { CornerTravel, TravelMoment } from "../../physics/travel/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/travelView.ts";
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
    ? messages.over({ fullForceN: forceText(fullForceN, unit) })
    : forceText(stopForceN, unit);
}

export function ratioText(ratio: number): string {
  return quantityText({ kind: "ratio", value: ratio }, "mm");
}

/** Less than any tape shows, mm. */
const justTouching = 0.05;

interface GapMoment {
  readonly gapMm: number;
  readonly compressionMm: number;
}

/** "Gap 12.3 mm", "Pressed by 4.0 mm". */
export function gapWords(
  { gapMm, compressionMm }: GapMoment,
  unit: LengthUnit,
): { readonly name: string; readonly text: string } {
  return compressionMm > justTouching
    ? { name: messages.pressedBy, text: lengthText(compressionMm, unit) }
    : { name: messages.gap, text: lengthText(gapMm, unit) };
}

/** "gap 12.3 mm", "pressed by 4.0 mm". */
export function gapInTable({ gapMm, compressionMm }: GapMoment, unit: LengthUnit): string {
  const isPressed = compressionMm > justTouching;
  return messages.gapInTable({
    isPressed,
    length: lengthText(isPressed ? compressionMm : gapMm, unit),
  });
}

/** Where the wheel is, by the name of the place where it has one. */
export function placeWords(span: TravelSpan, travelMm: number, unit: LengthUnit): string {
  const here = span.marks.find((mark) => Math.abs(mark.travelMm - travelMm) < 0.05);
  const travel =
    travelMm < -0.05
      ? messages.downFromRide({ travelMm: lengthText(-travelMm, unit) })
      : messages.upFromRide({ lengthText: lengthText(Math.max(0, travelMm), unit) });
  return here ? messages.placeAndTravel({ place: here.words, travel }) : travel;
}

/** One corner's travel told, for who does not see it. */
export function travelSentence(
  assessed: CornerAssessment,
  travel: CornerTravel,
  span: TravelSpan,
  unit: LengthUnit,
): string {
  const hit = limitWords[assessed.hardLimit ?? "other"];
  const places = span.marks
    .filter(({ id }) => id !== "ride")
    .map(({ id, travelMm }) =>
      messages.placeAt({
        place: id,
        hit,
        travelMm: lengthText(travelMm, unit),
      }),
    );
  const { gapMm, compressionMm } = travel.at(0);
  const stands =
    compressionMm > justTouching
      ? messages.atRideStopIs({ compressionMm: lengthText(compressionMm, unit) })
      : messages.atRideStopsGap({ gapMm: lengthText(gapMm, unit) });
  const early = span.fullNotReached ? messages.travelEndsThereBefore({ hardLimit: hit }) : "";
  const none = assessed.wheelTravelToHardLimitMm === null ? messages.noClearanceWasMeasured : "";
  return messages.drawnToScaleWheel({
    side: sideWords[assessed.side],
    stands,
    places: said(commaList(places)),
    early,
    none,
  });
}
