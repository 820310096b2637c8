import type { RideQuantity } from "../../../physics/fitment.ts";
import { catalogueEntry, entryUnit } from "../../../records/entry/readingCatalogue.ts";
import { type EntryUnit, fromModel } from "../../../records/entry/units.ts";
import { unbroken } from "../../../saying/quantityText.ts";
import type { Preferences } from "../../preferences.ts";

type Units = Pick<Preferences, "length">;

function figures(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A value and its ± with the unit once, both to the place that the ± can tell: "1.74 ± 0.51 N·s/mm". */
export function rideRange(
  name: RideQuantity,
  value: number,
  tol: number,
  preferences: Units,
): string {
  const unit = rideUnit(name, preferences);
  const shown = fromModel(value, unit);
  const shownTol = Number(fromModel(tol, unit).toPrecision(2));
  if (!(shownTol > 0)) return rideText(name, value, preferences);
  const places = Math.min(3, Math.max(0, 1 - Math.floor(Math.log10(shownTol))));
  return unbroken(`${shown.toFixed(places)} ± ${shownTol.toFixed(places)} ${unit}`);
}

function rideUnit(name: RideQuantity, preferences: Units): EntryUnit {
  const { kind } = catalogueEntry(`ride.${name}`);
  return entryUnit(kind, preferences.length);
}

/** A ride quantity in the person's units, three figures. */
function rideText(name: RideQuantity, value: number, preferences: Units): string {
  const unit = rideUnit(name, preferences);
  const shown = fromModel(value, unit);
  return unbroken(`${unit === "kg" || unit === "lb" ? shown.toFixed(0) : figures(shown)} ${unit}`);
}
