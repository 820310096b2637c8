import type {
  CurvePoint,
  DampingPoint,
  GeometryReadingName,
  LimitKind,
  RideQuantity,
  Side,
  UseRules,
} from "../../physics/fitment.ts";
import { type Outcome, type ReadingId, succeed } from "../../physics/outcome.ts";
import type { PartialCheckRecord, PartialCorner, TypedReading } from "../check/checkRecord.ts";
import { type Entry, readEntry, readNumber, readTable, readTolerance } from "./entry.ts";

const geometryNames: readonly GeometryReadingName[] = [
  "pivotToStop",
  "pivotToOuter",
  "pivotToMount",
  "damperLength",
  "track",
  "stopSpacing",
  "armAngle",
  "stopLineAngle",
  "mountLineAngle",
  "stopLean",
];

export function isGeometryName(name: string): name is GeometryReadingName {
  return (geometryNames as readonly string[]).includes(name);
}

type CornerReadingName = "gap" | "rideHeight" | "cornerMassKg";
const cornerReadingNames: readonly string[] = ["gap", "rideHeight", "cornerMassKg"];
const rideQuantities: readonly string[] = [
  "unsprungMassKg",
  "wheelRateNPerMm",
  "tyreRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
  "payloadPerCornerKg",
];
type NumericRule = Exclude<keyof UseRules, "roadClass" | "events">;
const numericRules: readonly string[] = [
  "speedKmPerH",
  "allowedContactsPerKm",
  "accelerationCapG",
  "reserveMm",
  "balanceMm",
];

/** Where in a record an entry's value belongs. */
export type EntryPath =
  | { readonly place: "layoutReading"; readonly name: GeometryReadingName }
  | { readonly place: "cornerReading"; readonly side: Side; readonly name: CornerReadingName }
  | { readonly place: "cornerGeometry"; readonly side: Side; readonly name: GeometryReadingName }
  | { readonly place: "limitReading"; readonly side: Side; readonly index: number }
  | { readonly place: "limitRatio"; readonly side: Side; readonly index: number }
  | { readonly place: "freeHeight" }
  | { readonly place: "usableCompression" }
  | { readonly place: "curve" }
  | { readonly place: "damping" }
  | { readonly place: "ride"; readonly name: RideQuantity }
  | { readonly place: "rule"; readonly name: NumericRule }
  | { readonly place: "lift" }
  | { readonly place: "wheelPerOuter" };

/** The place an entry id names, or null for one that no record has. */
export function entryPath(id: ReadingId): EntryPath | null {
  if (isGeometryName(id)) return { place: "layoutReading", name: id };
  const parts = id.split(".");
  const [first, second = ""] = parts;
  if (first === "left" || first === "right") return cornerPath(first, parts.slice(1));
  if (parts.length !== 2) return null;
  if (first === "ride" && rideQuantities.includes(second)) {
    return { place: "ride", name: second as RideQuantity };
  }
  if (first === "rules" && numericRules.includes(second)) {
    return { place: "rule", name: second as NumericRule };
  }
  switch (id) {
    case "stop.freeHeight":
      return { place: "freeHeight" };
    case "stop.usableCompressionMm":
      return { place: "usableCompression" };
    case "stop.curve":
      return { place: "curve" };
    case "stop.damping":
      return { place: "damping" };
    case "vehicle.liftMm":
      return { place: "lift" };
    case "layout.wheelPerOuter":
      return { place: "wheelPerOuter" };
    default:
      return null;
  }
}

function cornerPath(side: Side, parts: readonly string[]): EntryPath | null {
  const [name = "", index = "", field] = parts;
  if (name === "limits" && /^\d{1,3}$/.test(index)) {
    if (parts.length === 2) return { place: "limitReading", side, index: Number(index) };
    return field === "perWheel" && parts.length === 3
      ? { place: "limitRatio", side, index: Number(index) }
      : null;
  }
  if (parts.length !== 1) return null;
  if (cornerReadingNames.includes(name)) {
    return { place: "cornerReading", side, name: name as CornerReadingName };
  }
  return isGeometryName(name) ? { place: "cornerGeometry", side, name } : null;
}

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

/** A reading in place of another keeps whatever else the record said of it. */
function replaced(
  old: TypedReading | undefined,
  next: TypedReading | undefined,
): TypedReading | undefined {
  return next === undefined ? undefined : { ...old, ...next };
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

/** The outcome of reading one entry, whatever kind of field it is. */
export function entryOutcome(id: ReadingId, entry: Entry): Outcome<unknown> {
  const path = entryPath(id);
  if (path === null) return succeed(null);
  switch (path.place) {
    case "curve":
      return readTable(id, entry, 2);
    case "damping":
      return readTable(id, entry, 3);
    case "layoutReading":
    case "cornerReading":
    case "cornerGeometry":
    case "limitReading":
    case "freeHeight":
      return readEntry(id, entry);
    default: {
      const number = readNumber(id, entry);
      if (!number.ok) return number;
      const tolerance = readTolerance(id, entry);
      return tolerance.ok ? number : tolerance;
    }
  }
}

/** The record with the entry's value in its place, or without the field where it can't be read. */
export function recordWithEntry(
  record: PartialCheckRecord,
  id: ReadingId,
  entry: Entry,
): PartialCheckRecord {
  const path = entryPath(id);
  if (path === null) return record;
  const reading = (): TypedReading | undefined => valueOr(readEntry(id, entry));
  const number = (): number | undefined => valueOr(readNumber(id, entry));
  switch (path.place) {
    case "layoutReading": {
      const readings = record.layout?.readings ?? {};
      const changed = withField(readings, path.name, replaced(readings[path.name], reading()));
      return { ...record, layout: { ...record.layout, readings: changed } };
    }
    case "cornerReading":
      return withCorner(record, path.side, (corner) =>
        withField(corner, path.name, replaced(corner[path.name], reading())),
      );
    case "cornerGeometry":
      return withCorner(record, path.side, (corner) => {
        const geometry = corner.geometry ?? {};
        const changed = withField(geometry, path.name, replaced(geometry[path.name], reading()));
        return withField(corner, "geometry", unlessEmptied(corner.geometry, changed));
      });
    case "limitReading":
      return withCorner(record, path.side, (corner) => ({
        ...corner,
        limits: corner.limits.map((limit, index) =>
          index === path.index
            ? withField(limit, "reading", replaced(limit.reading, reading()))
            : limit,
        ),
      }));
    case "limitRatio":
      return withCorner(record, path.side, (corner) => ({
        ...corner,
        limits: corner.limits.map((limit, index) =>
          index === path.index ? withField(limit, "perWheel", number()) : limit,
        ),
      }));
    case "freeHeight": {
      const stop = record.stop ?? {};
      return {
        ...record,
        stop: withField(stop, "freeHeight", replaced(stop.freeHeight, reading())),
      };
    }
    case "usableCompression":
      return { ...record, stop: withField(record.stop ?? {}, "usableCompressionMm", number()) };
    case "curve": {
      const rows = valueOr(readTable(id, entry, 2)) as readonly CurvePoint[] | undefined;
      return { ...record, stop: withField(record.stop ?? {}, "curve", rows) };
    }
    case "damping": {
      const table = readTable(id, entry, 3);
      const empty = !table.ok && table.fault.code === "entryEmpty";
      const rows = valueOr(table) as readonly DampingPoint[] | undefined;
      return {
        ...record,
        stop: withField(record.stop ?? {}, "damping", empty ? null : rows),
      };
    }
    case "ride":
      return recordWithRide(record, path.name, number(), entry.tol.trim() === "" ? null : entry);
    case "rule": {
      const rules = withField(record.rules ?? {}, path.name, number());
      return withField(record, "rules", unlessEmptied(record.rules, rules));
    }
    case "lift":
      return { ...record, vehicle: withField(record.vehicle ?? {}, "liftMm", number()) };
    case "wheelPerOuter":
      return { ...record, layout: withField(record.layout ?? {}, "wheelPerOuter", number()) };
  }
}

function recordWithRide(
  record: PartialCheckRecord,
  name: RideQuantity,
  value: number | undefined,
  toleranceEntry: Entry | null,
): PartialCheckRecord {
  const id = `ride.${name}`;
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
export function limitKindOf(record: PartialCheckRecord, id: ReadingId): LimitKind | undefined {
  const path = entryPath(id);
  if (path === null || (path.place !== "limitReading" && path.place !== "limitRatio")) {
    return undefined;
  }
  return record.corners.find((corner) => corner.side === path.side)?.limits[path.index]?.kind;
}
