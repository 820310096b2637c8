import type { DesignEvent } from "../../physics/fitment.ts";
import { quantityText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import * as messages from "../../words/compiled/screens/assessment.ts";

/** "Landing from 100 mm", "Obstacle 4 in × 79 in at 25 mph". */
export function eventWords(event: DesignEvent, unit: LengthUnit): string {
  return event.kind === "landing"
    ? messages.landingFrom({ eventLength: eventLengthText(event.heightM, unit) })
    : messages.speedBump({
        kind: event.kind,
        eventLength: eventLengthText(event.heightM, unit),
        eventLength2: eventLengthText(event.lengthM, unit),
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
