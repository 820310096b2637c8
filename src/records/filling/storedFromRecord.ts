import {
  cornerReadingNames,
  geometryNames,
  type ReadingId,
  rideQuantities,
  ruleValueNames,
  stopNumberNames,
} from "../../physics/readings/index.ts";
import type {
  CheckRecord,
  CheckStop,
  PartialCheckRecord,
  TypedReading,
} from "../check/checkRecord.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { type Entry, entryOfReading, entryText, isShortIn } from "../entry/entry.ts";
import { limitKindOf } from "../entry/entryPath.ts";
import { catalogueEntry, entryUnit } from "../entry/readingCatalogue.ts";
import { type LengthUnit, plainDecimal } from "../entry/units.ts";

/**
 * A stored check from a complete record (an import or a demo): the record as it is, and entries from
 * what was typed where that agrees with the numbers, from the numbers where it does not.
 */
export function storedFromRecord(
  record: CheckRecord,
  options: { readonly unit?: LengthUnit; readonly name?: string } = {},
): StoredCheck {
  const right = record.corners.find((corner) => corner.side === "right");
  return {
    id: record.id,
    name: options.name ?? record.vehicle.label,
    createdAt: record.createdAt,
    updatedAt: record.createdAt,
    record,
    entries: entriesOf(record, options.unit ?? "mm"),
    choices: {},
    progress: {
      step: "answer",
      skipped: [],
      cautionsFor: null,
      stood: [],
      rightGeometry: right === undefined ? null : right.geometry === undefined ? "same" : "own",
    },
  };
}

/** Every entry of a record, by its id. */
export function entriesOf(record: PartialCheckRecord, unit: LengthUnit): { [id: string]: Entry } {
  const entries: { [id: string]: Entry } = {};
  const addReading = (id: ReadingId, reading: TypedReading | undefined): void => {
    if (reading === undefined) return;
    const kind = catalogueEntry(id).kind;
    entries[id] = entryOfReading(id, reading, entryUnit(kind, unit), limitKindOf(record, id));
  };
  const addNumber = (id: ReadingId, value: number | undefined, tolerance?: number): void => {
    if (value === undefined) return;
    entries[id] = numberEntry(id, value, unit, tolerance);
  };
  for (const name of geometryNames) addReading(name, record.layout?.readings?.[name]);
  addNumber("layout.wheelPerOuter", record.layout?.wheelPerOuter);
  addNumber("layout.wheelPerOuterTol", record.layout?.wheelPerOuterTol);
  addNumber("vehicle.liftMm", record.vehicle?.liftMm);
  for (const corner of record.corners) {
    for (const name of cornerReadingNames) addReading(`${corner.side}.${name}`, corner[name]);
    for (const name of geometryNames) addReading(`${corner.side}.${name}`, corner.geometry?.[name]);
    corner.limits.forEach((limit, index) => {
      const id = `${corner.side}.limits.${index}` as const;
      addReading(id, limit.reading);
      addReading(`${id}.distance`, limit.distance);
      addNumber(`${id}.perWheel`, limit.perWheel);
    });
  }
  Object.assign(entries, stopEntries(record.stop ?? {}, unit));
  const { tolerances, estimated: _, ...quantities } = record.ride ?? {};
  for (const name of rideQuantities) {
    addNumber(`ride.${name}`, quantities[name], tolerances?.[name]);
  }
  for (const name of ruleValueNames) {
    // What the house rules give is no change of this check's own.
    const value = record.rules?.[name];
    if (value !== record.reference?.rules?.[name]) addNumber(`rules.${name}`, value);
  }
  return entries;
}

export function numberEntry(
  id: ReadingId,
  value: number,
  unit: LengthUnit,
  tolerance?: number,
): Entry {
  const { kind } = catalogueEntry(id);
  const wanted = entryUnit(kind, unit);
  const shownIn = isShortIn(value, wanted) ? wanted : entryUnit(kind, "mm");
  return {
    texts: [entryText(value, kind, shownIn)],
    unit: shownIn,
    tol: tolerance === undefined ? "" : entryText(tolerance, kind, shownIn),
  };
}

export function stopEntries(stop: Partial<CheckStop>, unit: LengthUnit): { [id: string]: Entry } {
  const entries: { [id: string]: Entry } = {};
  if (stop.freeHeight !== undefined) {
    entries["stop.freeHeight"] = entryOfReading("stop.freeHeight", stop.freeHeight, unit);
  }
  for (const name of stopNumberNames) {
    const value = stop[name];
    if (value !== undefined) entries[`stop.${name}`] = numberEntry(`stop.${name}`, value, unit);
  }
  // Test data are tables in mm and N whatever the tape reads.
  const table = (rows: readonly (readonly number[])[]): Entry => ({
    texts: rows.flat().map(plainDecimal),
    unit: "mm",
    tol: "",
  });
  if (stop.curve !== undefined) entries["stop.curve"] = table(stop.curve);
  if (stop.damping !== undefined && stop.damping !== null) {
    entries["stop.damping"] = table(stop.damping);
  }
  return entries;
}
