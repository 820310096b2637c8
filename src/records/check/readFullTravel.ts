import { type ContactPart, contactParts } from "../../physics/readings/index.ts";
import { isPlainObject, type PlainObject } from "../text/plainObject.ts";
import type { TypedReading } from "./checkRecord.ts";
import type { FullTravelRecord, FullTravelSide } from "./fullTravel.ts";
import { recordBounds } from "./recordFormat.ts";

function fieldsOf(value: unknown): PlainObject {
  return isPlainObject(value) ? value : {};
}

function isUsable(value: unknown): value is number {
  return typeof value === "number" && Math.abs(value) <= recordBounds.magnitude;
}

function isReading(value: unknown): value is TypedReading {
  const { values, tol } = fieldsOf(value);
  if (!Array.isArray(values) || values.length === 0) return false;
  return (
    values.length <= recordBounds.repeats && values.every(isUsable) && isUsable(tol) && tol >= 0
  );
}

function readContact(value: unknown, part: ContactPart): object | undefined {
  const { reading, blockHeight, note } = fieldsOf(value);
  const text =
    typeof note === "string" && note.length <= recordBounds.labelCharacters ? note : undefined;
  const contact = {
    ...(isReading(reading) && { reading }),
    ...(part === "block" && isReading(blockHeight) && { blockHeight }),
    ...(text && { note: text }),
  };
  return Object.keys(contact).length === 0 ? undefined : contact;
}

function readSide(value: unknown): FullTravelSide | null {
  const { side, atRide, contacts } = fieldsOf(value);
  if (side !== "left" && side !== "right") return null;
  const given = fieldsOf(contacts);
  const found = contactParts.flatMap((part) => {
    const contact = Object.hasOwn(given, part) ? readContact(given[part], part) : undefined;
    return contact === undefined ? [] : [[part, contact] as const];
  });
  return {
    side,
    contacts: Object.fromEntries(found),
    ...(isReading(atRide) && { atRide }),
  };
}

/**
 * The hand-cycled check of a record whose shape nobody has judged, as far as it can be read; null where
 * there is none. What of it can't be read is passed over.
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
