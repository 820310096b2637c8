import type { DesignEvent } from "../../physics/fitment.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { quantityText, unbroken } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/assessment.ts";

/** "Landing from 100 mm", "Obstacle 4 in × 79 in at 25 mph". */
export function eventWords(event: DesignEvent, unit: LengthUnit): string {
  const length = (metres: number) => unbroken(eventLengthText(metres, unit));
  return event.kind === "landing"
    ? messages.landingFrom({ eventLength: length(event.heightM) })
    : messages.speedBump({
        kind: event.kind,
        eventLength: length(event.heightM),
        eventLength2: length(event.lengthM),
        speed: speedText(event.speedKmPerH, unit),
      });
}

export function speedText(kmPerH: number, unit: LengthUnit): string {
  return quantityText({ kind: "roadSpeed", value: kmPerH }, unit);
}

/** A height or length of an event: in inches a round number, as a person thinks of it. */
export function eventLengthText(metres: number, unit: LengthUnit): string {
  const inches = fromModel(1000 * metres, "in");
  return unit === "in"
    ? `${Number(inches.toFixed(inches < 2 ? 1 : 0))} in`
    : `${Number((1000 * metres).toPrecision(4))} mm`;
}
