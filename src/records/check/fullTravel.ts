import type { FullTravelCheck, FullTravelCorner, Side } from "../../physics/fitment.ts";
import { type ContactPart, contactParts, type ReadingId } from "../../physics/readings/index.ts";
import { type Entry, entryOfReading, readEntry } from "../entry/entry.ts";
import type { LengthUnit } from "../entry/units.ts";
import type { CheckRecord, TypedReading } from "./checkRecord.ts";
import type { StoredCheck } from "./storedCheck.ts";

/** The record's field `fullTravel`: a check of the whole travel by hand. */
export type FullTravelRecord = NonNullable<CheckRecord["fullTravel"]>;

/** One side of it. */
export type FullTravelSide = FullTravelRecord["corners"][number];

type Contacts = FullTravelSide["contacts"];

export const noFullTravel: FullTravelRecord = {
  acknowledged: null,
  measure: "wheelTravel",
  movement: "both",
  corners: [],
};

/** What the comparison needs of it: only contacts that were measured. */
export function fullTravelCheckOf(record: FullTravelRecord): FullTravelCheck {
  return {
    measure: record.measure,
    movement: record.movement,
    corners: record.corners.map(({ side, atRide, contacts }): FullTravelCorner => {
      const { block, ...others } = contacts;
      const measured = Object.entries(others).flatMap(([part, { reading }]) =>
        reading === undefined ? [] : [[part, reading] as const],
      );
      const { reading, blockHeight } = block ?? {};
      return {
        side,
        contacts: Object.fromEntries(measured),
        ...(atRide && { atRide }),
        ...(reading && blockHeight && { block: { reading, blockHeight } }),
      };
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

/** Which of its cautions the person on this phone ticked. */
export const fullTravelTicksId = "fullTravel.cautions";

/** What came from elsewhere brings no ticks: nobody goes under a vehicle past cautions that someone else read. */
export function withoutTicks(entries: StoredCheck["entries"]): StoredCheck["entries"] {
  const { [fullTravelTicksId]: _, ...others } = entries;
  return others;
}

/** Where a contact is typed: travel and height apart, so that changing the way loses neither. */
export function contactEntryId(
  side: Side,
  part: ContactPart,
  measure: FullTravelCheck["measure"],
): ReadingId {
  return `fullTravel.${side}.${part}.${measure === "hubToArch" ? "heightToArch" : "wheelTravel"}`;
}

export function atRideEntryId(side: Side): ReadingId {
  return `fullTravel.${side}.atRide.heightToArch`;
}

export function blockHeightEntryId(side: Side): ReadingId {
  return `fullTravel.${side}.block.blockHeight`;
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
  const changed = change(stored.record.fullTravel ?? noFullTravel);
  const corners = stored.record.corners.map(({ side }): FullTravelSide => {
    const own = changed.corners.find((each) => each.side === side);
    let contacts: Contacts = {};
    for (const part of contactParts) {
      const reading = fromEntry(stored, contactEntryId(side, part, changed.measure));
      const height = part === "block" ? fromEntry(stored, blockHeightEntryId(side)) : undefined;
      const note = own?.contacts[part]?.note;
      if (!reading && !height && !note) continue;
      const contact = {
        ...(reading && { reading }),
        ...(height && { blockHeight: height }),
        ...(note && { note }),
      };
      contacts = { ...contacts, [part]: contact };
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
  part: ContactPart,
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
  const record = stored.record.fullTravel;
  const entries: { [id: string]: Entry } = {};
  for (const { side, atRide, contacts } of record?.corners ?? []) {
    const found: readonly (readonly [ReadingId, TypedReading | undefined])[] = [
      [atRideEntryId(side), atRide],
      [blockHeightEntryId(side), contacts.block?.blockHeight],
      ...contactParts.map(
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
