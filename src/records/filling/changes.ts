import type { GeometryReadingName, LayoutKind, RideQuantity, Side } from "../../physics/fitment.ts";
import { layoutReadingsInOrder, limitOf } from "../../physics/readings/index.ts";
import type { CheckStop, GeometryReadings, PartialLimit } from "../check/checkRecord.ts";
import { changeProgress, changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { type Entry, type EntryKey, readEntry } from "../entry/entry.ts";
import { recordWithEntry, withCorner, withField } from "../entry/entryPath.ts";
import type { LengthUnit } from "../entry/units.ts";
import { withPhotosAt } from "../photo/photoReadings.ts";
import { movedTo } from "./choice.ts";
import { numberEntry, stopEntries } from "./storedFromRecord.ts";

/** The check with one entry changed, and the record's field set, or gone where it can't be read. */
export function setEntry(stored: StoredCheck, id: EntryKey, entry: Entry): StoredCheck {
  const entries = { ...stored.entries, [id]: entry };
  return {
    ...stored,
    updatedAt: new Date().toISOString(),
    record: recordWithEntry(stored.record, id, entry, entries),
    entries,
  };
}

/** Readings among `names` that the entries give: those of both sides, or one side's own. */
function readingsFromEntries(
  stored: StoredCheck,
  side: Side | null,
  names: readonly GeometryReadingName[],
  kept: GeometryReadings,
): GeometryReadings {
  let readings: GeometryReadings = {};
  for (const name of names) {
    const id = side === null ? name : (`${side}.${name}` as const);
    const entry = stored.entries[id];
    const outcome = entry === undefined ? null : readEntry(id, entry);
    const reading = kept[name] ?? (outcome?.ok === true ? outcome.value : undefined);
    if (reading !== undefined) readings = withField(readings, name, reading);
  }
  return readings;
}

/**
 * The check with a layout chosen. What was typed for another layout stays in the entries and comes
 * back when that layout is chosen again.
 */
export function chooseLayout(stored: StoredCheck, kind: LayoutKind): StoredCheck {
  return changeRecord(stored, (record) => {
    const kept = record.layout?.kind === kind ? (record.layout.readings ?? {}) : {};
    const readings = readingsFromEntries(stored, null, layoutReadingsInOrder[kind], kept);
    const changed = { ...record, layout: { ...record.layout, kind, readings } };
    const right = changed.corners.find((corner) => corner.side === "right");
    return right?.geometry === undefined
      ? changed
      : withCorner(changed, "right", (corner) => ({
          ...corner,
          geometry: readingsFromEntries(stored, "right", layoutReadingsInOrder[kind], {}),
        }));
  });
}

/** The right side's geometry: the left's, or its own. Its own comes back when chosen again. */
export function chooseRightGeometry(stored: StoredCheck, choice: "same" | "own"): StoredCheck {
  const kind = stored.record.layout?.kind;
  const changed = changeRecord(stored, (record) => {
    const right = record.corners.find((corner) => corner.side === "right");
    if (choice === "same") {
      return right === undefined
        ? record
        : withCorner(record, "right", (corner) => withField(corner, "geometry", undefined));
    }
    const names = kind === undefined ? [] : layoutReadingsInOrder[kind];
    const geometry = readingsFromEntries(stored, "right", names, right?.geometry ?? {});
    return Object.keys(geometry).length === 0
      ? record
      : withCorner(record, "right", (corner) => ({ ...corner, geometry }));
  });
  return changeProgress(changed, { rightGeometry: choice });
}

/** The check with one more hard limit on a side; its entry is "<side>.limits.<its index>". */
export function addLimit(stored: StoredCheck, side: Side, limit: PartialLimit): StoredCheck {
  return changeRecord(stored, (record) =>
    withCorner(record, side, (corner) => ({ ...corner, limits: [...corner.limits, limit] })),
  );
}

/** The check without one hard limit; entries, choices and photos of those after it move down with them. */
export function removeLimit(stored: StoredCheck, side: Side, index: number): StoredCheck {
  const moved = (id: string): string | null => {
    const place = limitOf(id);
    if (place === null || place.side !== side || place.index < index) return id;
    const before = `${side}.limits.${place.index}`;
    return place.index === index
      ? null
      : `${side}.limits.${place.index - 1}${id.slice(before.length)}`;
  };
  const changed = changeRecord(stored, (record) =>
    withPhotosAt(
      withCorner(record, side, (corner) => ({
        ...corner,
        limits: corner.limits.filter((_, at) => at !== index),
      })),
      moved,
    ),
  );
  return { ...changed, ...movedTo(stored, moved) };
}

/** The check with a side taken out, and what was typed and chosen for it. */
export function removeCorner(stored: StoredCheck, side: Side): StoredCheck {
  const kept = (id: string): string | null => (id.startsWith(`${side}.`) ? null : id);
  const changed = changeRecord(stored, (record) => ({
    ...withPhotosAt(record, kept),
    corners: record.corners.filter((corner) => corner.side !== side),
  }));
  return { ...changed, ...movedTo(stored, kept) };
}

/** The check with this stop (of a pack), its entries as if they had been typed. */
export function chooseStop(
  stored: StoredCheck,
  stop: Partial<CheckStop>,
  unit: LengthUnit,
): StoredCheck {
  const { entries, choices } = movedTo(stored, (id) => (id.startsWith("stop.") ? null : id));
  const changed = changeRecord(stored, (record) => ({ ...record, stop }));
  return { ...changed, entries: { ...entries, ...stopEntries(stop, unit) }, choices };
}

/** The check with one ride quantity estimated: its value, ± and how it was come by. */
export function setEstimate(
  stored: StoredCheck,
  name: RideQuantity,
  estimate: { readonly value: number; readonly tolerance: number; readonly how: string },
  unit: LengthUnit,
): StoredCheck {
  const id = `ride.${name}` as const;
  const entry = numberEntry(id, estimate.value, unit, estimate.tolerance);
  return changeRecord(setEntry(stored, id, entry), (record) => ({
    ...record,
    ride: {
      ...record.ride,
      [name]: estimate.value,
      tolerances: { ...record.ride?.tolerances, [name]: estimate.tolerance },
      estimated: { ...record.ride?.estimated, [name]: estimate.how },
    },
  }));
}
