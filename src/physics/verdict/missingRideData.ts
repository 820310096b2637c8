import * as messages from "../../words/compiled/physics/verdict.ts";
import type { Check, Corner, Ride, RideQuantity, Side } from "../fitment.ts";
import { readingName } from "../readingNames.ts";
import type { ReadingId } from "../readings/readingId.ts";
import { rideQuantities } from "../readings/rideReadings.ts";
import { andList, type Message } from "../sentence.ts";

/** What the dynamic half of an answer needs of a corner: names of Ride, or "cornerMassKg". */
export type MissingRideData = RideQuantity | "cornerMassKg";

/** What of it is not known. */
export function missingRideData(
  corner: Corner,
  ride: Ride | undefined,
): readonly MissingRideData[] {
  const missing = rideQuantities.filter((name) => ride?.[name] === undefined);
  return corner.cornerMassKg === undefined ? ["cornerMassKg", ...missing] : missing;
}

/** The reading that would give it. */
export function missingId(name: MissingRideData, side: Side): ReadingId {
  return name === "cornerMassKg" ? `${side}.${name}` : `ride.${name}`;
}

/** A check that cannot be made for want of ride data (at least one): says what is not known. */
export function missingCheck(
  id: Check["id"],
  cannotSay: Message,
  side: Side,
  missing: readonly MissingRideData[],
): Check {
  const ids = missing.map((name) => missingId(name, side));
  const listed = andList(ids.map((reading) => readingName(reading)));
  return {
    id,
    state: "unsure",
    reading: ids[0] as ReadingId,
    sentence: [messages.cantTellNotKnown({ cannotSay, isOne: ids.length === 1, listed })],
  };
}
