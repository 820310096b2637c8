import type { Fault } from "../../physics/outcome.ts";
import { contactParts, type ReadingId } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { catalogueEntry } from "../entry/readingCatalogue.ts";
import type { PartialCheckRecord, TypedReading } from "./checkRecord.ts";
import { atRideEntryId, blockHeightEntryId, contactEntryId } from "./fullTravel.ts";

/** What must hold between the readings of a check of the whole travel. */
export function fullTravelFaults({ fullTravel }: Pick<PartialCheckRecord, "fullTravel">): Fault[] {
  if (fullTravel === undefined) return [];
  const faults: Fault[] = [];
  const look = (id: ReadingId, reading: TypedReading | undefined, side: "left" | "right"): void => {
    const { allowed, name } = catalogueEntry(id);
    const isAboveZero = allowed === "aboveZero";
    const isLow = (value: number): boolean => (isAboveZero ? value <= 0 : value < 0);
    if (reading?.values.some(isLow) !== true) return;
    faults.push({
      code: "notAboveZero",
      reading: id,
      sentence: [messages.inCheckOfWhole({ side, name, isAboveZero })],
    });
  };
  for (const { side, atRide, contacts } of fullTravel.corners) {
    look(atRideEntryId(side), atRide, side);
    for (const part of contactParts) {
      look(contactEntryId(side, part, fullTravel.measure), contacts[part]?.reading, side);
    }
    look(blockHeightEntryId(side), contacts.block?.blockHeight, side);
  }
  const sides = fullTravel.corners.map(({ side }) => side);
  if (new Set(sides).size < sides.length) {
    faults.push({
      code: "sidesEqual",
      reading: "fullTravel",
      sentence: [messages.checkOfWholeTravel({ sides: sides[0] ?? "left" })],
    });
  }
  return faults;
}
