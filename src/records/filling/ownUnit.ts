import type { StoredCheck } from "../check/storedCheck.ts";
import type { LengthUnit } from "../entry/units.ts";
import { chosen, withChoice } from "./choice.ts";

const id = "vehicle.units";

/** The units that this check has of its own, whatever the phone's are; null where it goes by those. */
export function unitOf(stored: StoredCheck): LengthUnit | null {
  return chosen(stored, id);
}

export function withUnit(stored: StoredCheck, unit: LengthUnit | null): StoredCheck {
  return withChoice(stored, id, unit);
}
