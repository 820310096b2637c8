import type {
  CurvePoint,
  DampingPoint,
  LimitKind,
  RideQuantity,
  Side,
} from "../../physics/fitment.ts";
import type { FieldPath, Outcome } from "../../physics/outcome.ts";
import {
  isReadingId,
  limitOf,
  placeOf,
  type ReadingId,
  type ReadingPlace,
  type StopReadingName,
} from "../../physics/readings/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type {
  CheckStop,
  PartialCheckRecord,
  PartialCorner,
  PartialLimit,
  TypedReading,
} from "../check/checkRecord.ts";
import {
  type Entry,
  type EntryKey,
  readEntry,
  readNumber,
  readTable,
  readTolerance,
} from "./entry.ts";

/** `object` with `name` set, or without it where the value is undefined. */
export function withField<Shape extends object, Name extends keyof Shape>(
  object: Shape,
  name: Name,
  value: Shape[Name] | undefined,
): Shape {
  const copy = { ...object };
  if (value === undefined) delete copy[name];
  else copy[name] = value;
  return copy;
}

/** A group of fields, or nothing at all where it has none: where it has just lost its last one. */
function unlessEmptied<Group extends object>(
  before: Group | undefined,
  after: Group,
): Group | undefined {
  const hadNone = before !== undefined && Object.keys(before).length === 0;
  return Object.keys(after).length === 0 && !hadNone ? undefined : after;
}

/**
 * A reading in place of another keeps whatever else the record said of it, and who said it as long as its
 * values are the same: what a person types over a value of the pack is that person's own.
 */
function replaced(
  old: TypedReading | undefined,
  next: TypedReading | undefined,
): TypedReading | undefined {
  if (next === undefined) return undefined;
  const { source, ...others } = old ?? {};
  const same =
    next.values.length === old?.values.length &&
    next.values.every((value, index) => value === old.values[index]);
  return { ...others, ...next, ...(source !== undefined && same && { source }) };
}

/** The record with one corner changed; a corner that is not there yet is added, left before right. */
export function withCorner(
  record: PartialCheckRecord,
  side: Side,
  change: (corner: PartialCorner) => PartialCorner,
): PartialCheckRecord {
  const present = record.corners.find((corner) => corner.side === side);
  const changed = change(present ?? { side, limits: [] });
  if (present !== undefined) {
    return {
      ...record,
      corners: record.corners.map((corner) => (corner.side === side ? changed : corner)),
    };
  }
  const corners = side === "left" ? [changed, ...record.corners] : [...record.corners, changed];
  return { ...record, corners };
}

function valueOr<Value>(outcome: Outcome<Value>): Value | undefined {
  return outcome.ok ? outcome.value : undefined;
}

/** What an entry at this place is: a reading with repeats and a ±, a plain number, or a table by its columns. */
function formOf(place: ReadingPlace): "reading" | "number" | 2 | 3 {
  switch (place.of) {
    case "geometry":
    case "corner":
    case "settle":
    case "fullTravel":
      return "reading";
    case "limit":
      return place.name === "perWheel" ? "number" : "reading";
    case "stop":
      if (place.name === "curve") return 2;
      if (place.name === "damping") return 3;
      return place.name === "freeHeight" ? "reading" : "number";
    case "ride":
    case "rules":
    case "vehicle":
    case "layout":
      return "number";
  }
}

/** Is this entry a reading (repeats and a ±), or one plain number or table? */
export function isReading(id: EntryKey): id is ReadingId {
  return isReadingId(id) && formOf(placeOf(id)) === "reading";
}

/** The outcome of reading one entry, whatever kind of field it is. */
export function entryOutcome(id: ReadingId, entry: Entry): Outcome<unknown> {
  const form = formOf(placeOf(id));
  if (form === "reading") return readEntry(id, entry);
  if (form !== "number") return readTable(id, entry, form);
  const number = readNumber(id, entry);
  if (!number.ok) return number;
  const tolerance = readTolerance(id, entry);
  return tolerance.ok ? number : tolerance;
}

type Entries = { readonly [id: string]: Entry };

/**
 * The record with the entry's value in its place, or without the field where it can't be read. `entries`
 * are all of the check, this one among them: some values are made of two.
 */
export function recordWithEntry(
  record: PartialCheckRecord,
  id: EntryKey,
  entry: Entry,
  entries: Entries = { [id]: entry },
): PartialCheckRecord {
  if (!isReadingId(id)) return record;
  const place = placeOf(id);
  const reading = (old: TypedReading | undefined) => replaced(old, valueOr(readEntry(id, entry)));
  const number = (): number | undefined => valueOr(readNumber(id, entry));
  switch (place.of) {
    case "geometry": {
      const { side, name } = place;
      if (side === null) {
        const readings = record.layout?.readings ?? {};
        const changed = withField(readings, name, reading(readings[name]));
        return { ...record, layout: { ...record.layout, readings: changed } };
      }
      return withCorner(record, side, (corner) => {
        const geometry = corner.geometry ?? {};
        const changed = withField(geometry, name, reading(geometry[name]));
        return withField(corner, "geometry", unlessEmptied(corner.geometry, changed));
      });
    }
    case "corner":
      return withCorner(record, place.side, (corner) =>
        withField(corner, place.name, reading(corner[place.name])),
      );
    case "settle":
      return withCorner(record, place.side, (corner) =>
        withField(corner, "settleMm", settleOf(place.side, entries)),
      );
    case "limit":
      return withLimit(record, place, (limit) =>
        place.name === "perWheel"
          ? withField(limit, "perWheel", number())
          : withField(limit, place.name, reading(limit[place.name])),
      );
    case "stop":
      return { ...record, stop: stopWithEntry(record.stop ?? {}, place.name, id, entry) };
    case "ride":
      return recordWithRide(record, place.name, number(), entry.tol.trim() === "" ? null : entry);
    case "rules": {
      const rules = withField(record.rules ?? {}, place.name, number());
      return withField(record, "rules", unlessEmptied(record.rules, rules));
    }
    case "vehicle":
      return { ...record, vehicle: withField(record.vehicle ?? {}, place.name, number()) };
    case "layout":
      return { ...record, layout: withField(record.layout ?? {}, place.name, number()) };
    case "fullTravel":
      // changeFullTravel puts all of that check's entries together.
      return record;
  }
}

function withLimit(
  record: PartialCheckRecord,
  place: { readonly side: Side; readonly index: number },
  change: (limit: PartialLimit) => PartialLimit,
): PartialCheckRecord {
  return withCorner(record, place.side, (corner) => ({
    ...corner,
    limits: corner.limits.map((limit, index) => (index === place.index ? change(limit) : limit)),
  }));
}

/** Half of what lies between the heights after lifting and after pushing down, mm, where both are read. */
function settleOf(side: Side, entries: Entries): number | undefined {
  const mean = (id: ReadingId): number | undefined => {
    const entry = entries[id];
    const reading = entry === undefined ? undefined : valueOr(readEntry(id, entry));
    return reading === undefined ? undefined : meanOf(reading);
  };
  const [lifted, pushed] = [mean(`${side}.liftedHeight`), mean(`${side}.pushedHeight`)];
  return lifted === undefined || pushed === undefined ? undefined : Math.abs(lifted - pushed) / 2;
}

function stopWithEntry(
  stop: Partial<CheckStop>,
  name: StopReadingName,
  id: ReadingId,
  entry: Entry,
): Partial<CheckStop> {
  switch (name) {
    case "freeHeight":
      return withField(stop, name, replaced(stop[name], valueOr(readEntry(id, entry))));
    case "curve": {
      const rows = valueOr(readTable(id, entry, 2)) as readonly CurvePoint[] | undefined;
      return withField(stop, name, rows);
    }
    case "damping": {
      const table = readTable(id, entry, 3);
      const empty = !table.ok && table.fault.code === "entryEmpty";
      const rows = valueOr(table) as readonly DampingPoint[] | undefined;
      return withField(stop, name, empty ? null : rows);
    }
    default:
      return withField(stop, name, valueOr(readNumber(id, entry)));
  }
}

function recordWithRide(
  record: PartialCheckRecord,
  name: RideQuantity,
  value: number | undefined,
  toleranceEntry: Entry | null,
): PartialCheckRecord {
  const id = `ride.${name}` as const;
  const tolerance =
    toleranceEntry === null || value === undefined
      ? undefined
      : valueOr(readTolerance(id, toleranceEntry));
  const old = record.ride ?? {};
  const tolerances = withField(old.tolerances ?? {}, name, tolerance);
  // A value typed over an estimate is no longer that estimate.
  const estimated =
    value === old[name] ? (old.estimated ?? {}) : withField(old.estimated ?? {}, name, undefined);
  let ride = withField(old, name, value);
  ride = withField(ride, "tolerances", unlessEmptied(old.tolerances, tolerances));
  ride = withField(ride, "estimated", unlessEmptied(old.estimated, estimated));
  return withField(record, "ride", unlessEmptied(record.ride, ride));
}

/** The kind of the limit an entry id belongs to, where the record has that limit. */
export function limitKindOf(record: PartialCheckRecord, id: FieldPath): LimitKind | undefined {
  return limitIn(record, id)?.kind;
}

/** The hard limit that an id belongs to, where the record has it. */
export function limitIn(
  record: Pick<PartialCheckRecord, "corners">,
  id: string,
): PartialLimit | undefined {
  const place = limitOf(id);
  return record.corners.find(({ side }) => side === place?.side)?.limits[place?.index ?? -1];
}
