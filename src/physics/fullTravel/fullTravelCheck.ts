import * as messages from "../../words/compiled/physics/fullTravel.ts";
import type { Side, TouchedPart } from "../fitment.ts";
import type { QuantityId } from "../readings/readingId.ts";
import type { Message } from "../sentence.ts";

/** What a hand check can meet: something of the vehicle, or a block put in the stop's place. */
export type MetPart = TouchedPart | "block";
/** … and full stop, which is computed alone. */
export type ComparedPart = MetPart | "fullStop";

import { limitTouches } from "../readingNames.ts";

/** A quantity of the calculation, or the hand check itself: one of its contacts, or where it started. */
export type SuspectId = QuantityId | `fullTravel.${Side}.${MetPart | "atRide"}`;

export const touchedParts: readonly TouchedPart[] = [
  "stop",
  "tyre",
  "damper",
  "spring",
  "metal",
  "hose",
  "other",
];

/** What happens at a contact, as the subject and verb of a clause. */
export const partTouches: Readonly<Record<MetPart, Message>> = {
  ...limitTouches,
  block: messages.blockInStopsPlace,
  stop: messages.stopMeetsItsPad,
  hose: messages.hoseWireOrLine,
};
