import type { DesignEvent } from "../../physics/fitment.ts";
import {
  fromModel,
  type LengthUnit,
  metresPerSecondPerMilePerHour,
} from "../../records/entry/units.ts";

/** "Landing from 100 mm", "Obstacle 4 in × 79 in at 25 mph". */
export function eventWords(event: DesignEvent, unit: LengthUnit): string {
  return event.kind === "landing"
    ? `Landing from ${metresText(event.heightM, unit)}`
    : `${event.kind === "hump" ? "Speed bump" : "Obstacle"} ${metresText(event.heightM, unit)} high, ${metresText(event.lengthM, unit)} long, at ${speedText(event.speedKmPerH, unit)}`;
}

export function speedText(kmPerH: number, unit: LengthUnit): string {
  return unit === "in"
    ? `${(kmPerH / 3.6 / metresPerSecondPerMilePerHour).toFixed(0)} mph`
    : `${Number(kmPerH.toPrecision(3))} km/h`;
}

function metresText(metres: number, unit: LengthUnit): string {
  return unit === "in"
    ? `${Number(fromModel(1000 * metres, "in").toFixed(1))} in`
    : `${Number((1000 * metres).toPrecision(4))} mm`;
}
