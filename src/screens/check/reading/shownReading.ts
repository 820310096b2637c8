import type { ReadingId } from "../../../physics/readings/index.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { entryLengthUnit, readEntry } from "../../../records/entry/entry.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";

/** The unit a drawing writes a reading in: its own, or where nothing is typed yet the usual one. */
export function shownUnit(stored: StoredCheck, id: string, usual: LengthUnit): LengthUnit {
  const entry = stored.entries[id];
  return entry ? entryLengthUnit(entry) : usual;
}

/** One reading as it was typed; a mean of several is better shown as a number. */
export function shownText(stored: StoredCheck, id: ReadingId): string | undefined {
  const entry = stored.entries[id];
  const reading = entry && readEntry(id, entry);
  return reading?.ok && reading.value.values.length === 1
    ? reading.value.typed?.[0]?.replace(" °", "°")
    : undefined;
}
