import type {
  GeometryReadingName,
  LayoutKind,
  RideQuantity,
  Side,
  State,
  UseRules,
} from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/outcome.ts";
import { layoutReadingsInOrder } from "../../physics/readings/geometryRegistry.ts";
import { rideQuantities } from "../../physics/readings/rideReadings.ts";
import { type Entry, entryOfReading, entryText, isShortIn, readEntry } from "../entry/entry.ts";
import {
  isGeometryName,
  limitKindOf,
  recordWithEntry,
  withCorner,
  withField,
} from "../entry/entryPath.ts";
import { catalogueEntry, entryUnit } from "../entry/readingCatalogue.ts";
import { type LengthUnit, plainDecimal } from "../entry/units.ts";
import { withPhotosAt } from "../photo/photoReadings.ts";
import type { EarlierValues } from "../remeasure/earlierValues.ts";
import type { RemeasureWalk } from "../remeasure/remeasureWalk.ts";
import type {
  CheckRecord,
  CheckStop,
  GeometryReadings,
  PartialCheckRecord,
  PartialLimit,
  TypedReading,
} from "./checkRecord.ts";
import { checkFormat, checkVersion } from "./recordFormat.ts";

export type { Entry } from "../entry/entry.ts";
export { type Completion, completeRecord, type MissingField } from "./completeRecord.ts";

export interface Progress {
  readonly step: string;
  readonly skipped: readonly string[];
  /** What the cautions were last acknowledged for; null: not yet. */
  readonly cautionsFor: "level" | "raised" | null;
  /** The steps of standing the vehicle that are done. */
  readonly stood: readonly string[];
  readonly rightGeometry: "same" | "own" | null;
}

/** A check as the phone keeps it: the record as far as it can be read, and what was typed. */
export interface StoredCheck {
  readonly id: string;
  readonly name: string;
  readonly createdAt: string;
  readonly updatedAt: string;
  readonly deletedAt?: string;
  /** Counted up by the store at each write; absent until first kept. */
  readonly revision?: number;
  /** The verdict that the answer last gave; what has changed since is not in it. */
  readonly lastVerdict?: State;
  readonly record: PartialCheckRecord;
  readonly entries: { readonly [id: ReadingId]: Entry };
  readonly progress: Progress;
  /** Values that were taken anew since. */
  readonly earlier?: EarlierValues;
  /** The walk through the readings to take again, while one is under way. */
  readonly again?: RemeasureWalk;
}

const freshProgress: Progress = {
  step: "",
  skipped: [],
  cautionsFor: null,
  stood: [],
  rightGeometry: null,
};

/** A random UUID, also where the page is not served over https and randomUUID is absent. */
export function newId(): string {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

function nowText(): string {
  return new Date().toISOString();
}

/** An empty check with an id and a date. */
export function newStoredCheck(name = ""): StoredCheck {
  const id = newId();
  const createdAt = nowText();
  return {
    id,
    name,
    createdAt,
    updatedAt: createdAt,
    record: {
      format: checkFormat,
      version: checkVersion,
      id,
      createdAt,
      author: { role: "installer" },
      vehicle: { platformId: null, liftMm: 0 },
      corners: [],
    },
    entries: {},
    progress: freshProgress,
  };
}

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
export function entriesOf(
  record: PartialCheckRecord,
  unit: LengthUnit,
): { [id: ReadingId]: Entry } {
  const entries: { [id: ReadingId]: Entry } = {};
  const addReading = (id: ReadingId, reading: TypedReading | undefined): void => {
    if (reading === undefined) return;
    const kind = catalogueEntry(id).kind;
    entries[id] = entryOfReading(id, reading, entryUnit(kind, unit), limitKindOf(record, id));
  };
  const addNumber = (id: ReadingId, value: number | undefined, tolerance?: number): void => {
    if (value === undefined) return;
    entries[id] = numberEntry(id, value, unit, tolerance);
  };
  const addReadings = (prefix: string, readings: GeometryReadings | undefined): void => {
    for (const [name, reading] of Object.entries(readings ?? {})) {
      if (isGeometryName(name)) addReading(`${prefix}${name}`, reading);
    }
  };
  addReadings("", record.layout?.readings);
  addNumber("layout.wheelPerOuter", record.layout?.wheelPerOuter);
  addNumber("vehicle.liftMm", record.vehicle?.liftMm);
  for (const corner of record.corners) {
    addReading(`${corner.side}.gap`, corner.gap);
    addReading(`${corner.side}.rideHeight`, corner.rideHeight);
    addReading(`${corner.side}.cornerMassKg`, corner.cornerMassKg);
    addReadings(`${corner.side}.`, corner.geometry);
    corner.limits.forEach((limit, index) => {
      addReading(`${corner.side}.limits.${index}`, limit.reading);
      addNumber(`${corner.side}.limits.${index}.perWheel`, limit.perWheel);
    });
  }
  Object.assign(entries, stopEntries(record.stop ?? {}, unit));
  const { tolerances, estimated: _, ...quantities } = record.ride ?? {};
  for (const name of rideQuantities) {
    addNumber(`ride.${name}`, quantities[name], tolerances?.[name]);
  }
  for (const [name, value] of Object.entries(record.rules ?? {})) {
    // What the house rules give is no change of this check's own.
    const house: unknown = record.reference?.rules?.[name as keyof UseRules];
    if (typeof value === "number" && value !== house) addNumber(`rules.${name}`, value);
  }
  return entries;
}

function numberEntry(id: ReadingId, value: number, unit: LengthUnit, tolerance?: number): Entry {
  const { kind } = catalogueEntry(id);
  const wanted = entryUnit(kind, unit);
  const shownIn = isShortIn(value, wanted) ? wanted : entryUnit(kind, "mm");
  return {
    texts: [entryText(value, kind, shownIn)],
    unit: shownIn,
    tol: tolerance === undefined ? "" : entryText(tolerance, kind, shownIn),
  };
}

function stopEntries(stop: Partial<CheckStop>, unit: LengthUnit): { [id: ReadingId]: Entry } {
  const entries: { [id: ReadingId]: Entry } = {};
  if (stop.freeHeight !== undefined) {
    entries["stop.freeHeight"] = entryOfReading("stop.freeHeight", stop.freeHeight, unit);
  }
  if (stop.usableCompressionMm !== undefined) {
    const id = "stop.usableCompressionMm";
    entries[id] = numberEntry(id, stop.usableCompressionMm, unit);
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

/** The check with one entry changed, and the record's field set, or gone where it can't be read. */
export function setEntry(stored: StoredCheck, id: ReadingId, entry: Entry): StoredCheck {
  return {
    ...stored,
    updatedAt: nowText(),
    record: recordWithEntry(stored.record, id, entry),
    entries: { ...stored.entries, [id]: entry },
  };
}

/** The check with its record changed in what is chosen, not typed: vehicle, use, axle, author … */
export function changeRecord(
  stored: StoredCheck,
  change: (record: PartialCheckRecord) => PartialCheckRecord,
): StoredCheck {
  return { ...stored, updatedAt: nowText(), record: change(stored.record) };
}

export function changeProgress(stored: StoredCheck, change: Partial<Progress>): StoredCheck {
  return { ...stored, updatedAt: nowText(), progress: { ...stored.progress, ...change } };
}

export function renameStored(stored: StoredCheck, name: string): StoredCheck {
  return { ...stored, updatedAt: nowText(), name };
}

/** The same readings as a new check of its own. */
export function copyStored(stored: StoredCheck, name: string): StoredCheck {
  const id = newId();
  const createdAt = nowText();
  const { deletedAt: _deleted, revision: _revision, again: _walk, ...rest } = stored;
  return {
    ...rest,
    id,
    name,
    createdAt,
    updatedAt: createdAt,
    record: { ...stored.record, id, createdAt },
  };
}

/** Readings among `names` that the entries under `prefix` give. */
function readingsFromEntries(
  stored: StoredCheck,
  prefix: string,
  names: readonly GeometryReadingName[],
  kept: GeometryReadings,
): GeometryReadings {
  let readings: GeometryReadings = {};
  for (const name of names) {
    const id = `${prefix}${name}`;
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
    const readings = readingsFromEntries(stored, "", layoutReadingsInOrder[kind], kept);
    const changed = { ...record, layout: { ...record.layout, kind, readings } };
    const right = changed.corners.find((corner) => corner.side === "right");
    return right?.geometry === undefined
      ? changed
      : withCorner(changed, "right", (corner) => ({
          ...corner,
          geometry: readingsFromEntries(stored, "right.", layoutReadingsInOrder[kind], {}),
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
    const geometry = readingsFromEntries(stored, "right.", names, right?.geometry ?? {});
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

/** The check without one hard limit; entries and photos of those after it move down with them. */
export function removeLimit(stored: StoredCheck, side: Side, index: number): StoredCheck {
  const entries: { [id: ReadingId]: Entry } = {};
  const pattern = new RegExp(`^${side}\\.limits\\.(\\d+)(.*)$`);
  const moved = (id: string): string | null => {
    const match = pattern.exec(id);
    const at = match === null ? -1 : Number(match[1]);
    if (at === index) return null;
    return at > index ? `${side}.limits.${at - 1}${match?.[2] ?? ""}` : id;
  };
  for (const [id, entry] of Object.entries(stored.entries)) {
    const next = moved(id);
    if (next !== null) entries[next] = entry;
  }
  const changed = changeRecord(stored, (record) =>
    withPhotosAt(
      withCorner(record, side, (corner) => ({
        ...corner,
        limits: corner.limits.filter((_, at) => at !== index),
      })),
      moved,
    ),
  );
  return { ...changed, entries };
}

/** The check with a side taken out, and what was typed for it. */
export function removeCorner(stored: StoredCheck, side: Side): StoredCheck {
  const kept = Object.entries(stored.entries).filter(([id]) => !id.startsWith(`${side}.`));
  const changed = changeRecord(stored, (record) => ({
    ...withPhotosAt(record, (id) => (id.startsWith(`${side}.`) ? null : id)),
    corners: record.corners.filter((corner) => corner.side !== side),
  }));
  return { ...changed, entries: Object.fromEntries(kept) };
}

/** The check with this stop (of a pack), its entries as if they had been typed. */
export function chooseStop(
  stored: StoredCheck,
  stop: Partial<CheckStop>,
  unit: LengthUnit,
): StoredCheck {
  const others = Object.entries(stored.entries).filter(([id]) => !id.startsWith("stop."));
  const changed = changeRecord(stored, (record) => ({ ...record, stop }));
  return { ...changed, entries: { ...Object.fromEntries(others), ...stopEntries(stop, unit) } };
}

/** The check with one ride quantity estimated: its value, ± and how it was come by. */
export function setEstimate(
  stored: StoredCheck,
  name: RideQuantity,
  estimate: { readonly value: number; readonly tolerance: number; readonly how: string },
  unit: LengthUnit,
): StoredCheck {
  const id = `ride.${name}`;
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
