import type {
  FullTravelCheck,
  FullTravelCorner,
  Side,
  TouchedPart,
} from "../../physics/fitment.ts";
import { touchedParts } from "../../physics/fullTravel/fullTravelCheck.ts";
import type { ReadingId } from "../../physics/outcome.ts";
import { type Entry, entryOfReading, readEntry } from "../entry/entry.ts";
import type { LengthUnit } from "../entry/units.ts";
import { recordBounds, type TypedReading } from "./checkRecord.ts";
import type { StoredCheck } from "./storedCheck.ts";

/** One contact of a hand-cycled check, as a record holds it. */
export interface FoundContact {
  /** mm of wheel travel, or of height from hub to arch. */
  readonly reading?: TypedReading;
  /** What touched, in the person's own words. */
  readonly note?: string;
}

export interface FullTravelSide {
  readonly side: Side;
  readonly atRide?: TypedReading;
  readonly contacts: { readonly [Part in TouchedPart]?: FoundContact };
}

/** The record's field `fullTravel`: a check of the whole travel by hand, the spring out. */
export interface FullTravelRecord {
  /** When its cautions were acknowledged, ISO 8601 UTC; null: not yet. */
  readonly acknowledged: string | null;
  readonly measure: FullTravelCheck["measure"];
  readonly movement: FullTravelCheck["movement"];
  readonly corners: readonly FullTravelSide[];
}

export const noFullTravel: FullTravelRecord = {
  acknowledged: null,
  measure: "wheelTravel",
  movement: "both",
  corners: [],
};

type Fields = { readonly [name: string]: unknown };

function fieldsOf(value: unknown): Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value)
    ? (value as Fields)
    : {};
}

function isUsable(value: unknown): value is number {
  return typeof value === "number" && Math.abs(value) <= recordBounds.magnitude;
}

function readReading(value: unknown): TypedReading | undefined {
  const { values, tol } = fieldsOf(value);
  if (!Array.isArray(values) || values.length === 0 || values.length > recordBounds.repeats) {
    return undefined;
  }
  return values.every(isUsable) && isUsable(tol) && tol >= 0 ? (value as TypedReading) : undefined;
}

function readContact(value: unknown): FoundContact | undefined {
  const { reading, note } = fieldsOf(value);
  const read = readReading(reading);
  const text =
    typeof note === "string" && note.length <= recordBounds.labelCharacters ? note : undefined;
  if (read === undefined && !text) return undefined;
  return { ...(read && { reading: read }), ...(text && { note: text }) };
}

function readSide(value: unknown): FullTravelSide | null {
  const { side, atRide, contacts } = fieldsOf(value);
  if (side !== "left" && side !== "right") return null;
  const given = fieldsOf(contacts);
  const found: { [Part in TouchedPart]?: FoundContact } = {};
  for (const part of touchedParts) {
    const contact = Object.hasOwn(given, part) ? readContact(given[part]) : undefined;
    if (contact) found[part] = contact;
  }
  const height = readReading(atRide);
  return { side, contacts: found, ...(height && { atRide: height }) };
}

/**
 * The hand-cycled check of a record, as far as it can be read; null where there is none. It is a field
 * that a reader of records need not know: what of it can't be read is passed over, never refused.
 */
export function readFullTravel(record: { readonly fullTravel?: unknown }): FullTravelRecord | null {
  if (record.fullTravel === undefined || record.fullTravel === null) return null;
  const { acknowledged, measure, movement, corners } = fieldsOf(record.fullTravel);
  const sides = Array.isArray(corners) ? corners.slice(0, 2).map(readSide) : [];
  return {
    acknowledged: typeof acknowledged === "string" ? acknowledged : null,
    measure: measure === "hubToArch" ? "hubToArch" : "wheelTravel",
    movement: movement === "one" ? "one" : "both",
    corners: sides.filter((side) => side !== null),
  };
}

/** What the comparison needs of it: only contacts that were measured. */
export function fullTravelCheckOf(record: FullTravelRecord): FullTravelCheck {
  return {
    measure: record.measure,
    movement: record.movement,
    corners: record.corners.map(({ side, atRide, contacts }): FullTravelCorner => {
      const measured = Object.entries(contacts).flatMap(([part, { reading }]) =>
        reading === undefined ? [] : [[part, reading] as const],
      );
      return { side, contacts: Object.fromEntries(measured), ...(atRide && { atRide }) };
    }),
  };
}

/** How many contacts were measured. */
export function contactsFound({ corners }: FullTravelRecord): number {
  return corners.reduce(
    (sum, { contacts }) => sum + Object.values(contacts).filter(({ reading }) => reading).length,
    0,
  );
}

/** Where a contact is typed: travel and height apart, so that changing the way loses neither. */
export function contactEntryId(
  side: Side,
  part: TouchedPart,
  measure: FullTravelCheck["measure"],
): ReadingId {
  return `fullTravel.${side}.${part}.${measure === "hubToArch" ? "heightToArch" : "wheelTravel"}`;
}

export function atRideEntryId(side: Side): ReadingId {
  return `fullTravel.${side}.atRide.heightToArch`;
}

function fromEntry(stored: StoredCheck, id: ReadingId): TypedReading | undefined {
  const entry = stored.entries[id];
  const outcome = entry === undefined ? null : readEntry(id, entry);
  return outcome?.ok ? outcome.value : undefined;
}

/** The check with its field `fullTravel` changed, its readings as they are typed. */
export function changeFullTravel(
  stored: StoredCheck,
  change: (record: FullTravelRecord) => FullTravelRecord,
): StoredCheck {
  const changed = change(readFullTravel(stored.record) ?? noFullTravel);
  const corners = stored.record.corners.map(({ side }): FullTravelSide => {
    const own = changed.corners.find((each) => each.side === side);
    const contacts: { [Part in TouchedPart]?: FoundContact } = {};
    for (const part of touchedParts) {
      const reading = fromEntry(stored, contactEntryId(side, part, changed.measure));
      const note = own?.contacts[part]?.note;
      if (reading || note) contacts[part] = { ...(reading && { reading }), ...(note && { note }) };
    }
    const atRide = fromEntry(stored, atRideEntryId(side));
    return { side, contacts, ...(atRide && { atRide }) };
  });
  return {
    ...stored,
    updatedAt: new Date().toISOString(),
    record: { ...stored.record, fullTravel: { ...changed, corners } },
  };
}

export function withNote(
  record: FullTravelRecord,
  side: Side,
  part: TouchedPart,
  note: string,
): FullTravelRecord {
  const own = record.corners.find((each) => each.side === side) ?? { side, contacts: {} };
  const { note: _, ...rest } = own.contacts[part] ?? {};
  const contact = note === "" ? rest : { ...rest, note };
  const changed = { ...own, contacts: { ...own.contacts, [part]: contact } };
  return {
    ...record,
    corners: [...record.corners.filter((each) => each.side !== side), changed],
  };
}

/** Entries for what a file brought and nobody has typed here yet; the very check where there are none. */
export function withFullTravelEntries(stored: StoredCheck, unit: LengthUnit): StoredCheck {
  const record = readFullTravel(stored.record);
  const entries: { [id: ReadingId]: Entry } = {};
  for (const { side, atRide, contacts } of record?.corners ?? []) {
    const found: readonly (readonly [ReadingId, TypedReading | undefined])[] = [
      [atRideEntryId(side), atRide],
      ...touchedParts.map(
        (part) =>
          [
            contactEntryId(side, part, record?.measure ?? "wheelTravel"),
            contacts[part]?.reading,
          ] as const,
      ),
    ];
    for (const [id, reading] of found) {
      if (reading === undefined || stored.entries[id] !== undefined) continue;
      entries[id] = entryOfReading(id, reading, unit);
    }
  }
  return Object.keys(entries).length === 0
    ? stored
    : { ...stored, entries: { ...stored.entries, ...entries } };
}
