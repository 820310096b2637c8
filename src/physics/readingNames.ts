import * as messages from "../words/compiled/physics.ts";
import { settle } from "./readings/cornerReadings.ts";
import { definitionOf } from "./readings/definitionOf.ts";
import { fullTravelReadings } from "./readings/fullTravelReadings.ts";
import type { LimitKind } from "./readings/limitReadings.ts";
import { parseReadingId, type ReadingPlace, sideOf } from "./readings/readingId.ts";
import type { Message } from "./sentence.ts";

export { limitTouches } from "./readings/limitReadings.ts";

/** What takes part in the doubt without being read: its place in a sentence. */
const derivedNames: Readonly<Record<string, Message>> = {
  linkage: messages.linkage,
  settle: settle.name,
  testDoubt: messages.testOfStop,
};

/**
 * A reading's name in plain words with its article and, where it has one, its side: "the left gap",
 * "the arm angle". A hard limit is named by its kind where that is given. An id that is not known is
 * named by its last part, so that a sentence is never empty; one of the check by hand by its contact.
 */
export function readingName(id: string, limitKind?: LimitKind): Message {
  return nameOf(id, limitKind, false);
}

/** The same without its article: "left gap". */
export function bareReadingName(id: string, limitKind?: LimitKind): Message {
  return nameOf(id, limitKind, true);
}

function nameOf(id: string, limitKind: LimitKind | undefined, bare: boolean): Message {
  const place = parseReadingId(id);
  if (place?.of === "fullTravel") return contactName(place, bare);
  const side = sideOf(id);
  const last = id.slice(id.lastIndexOf(".") + 1);
  const derived = Object.hasOwn(derivedNames, last) ? derivedNames[last] : undefined;
  const name = derived ?? definitionOf(id, limitKind)?.name ?? last;
  return messages.the({ bare, side: side ?? undefined, name });
}

/** "the left wheel travel at the block's contact". */
function contactName(
  { side, part, name }: ReadingPlace & { readonly of: "fullTravel" },
  bare: boolean,
): Message {
  const words = messages.the({ bare, side, name: fullTravelReadings[name].name });
  if (part === "atRide") return messages.atRide({ words });
  return name === "blockHeight" ? words : messages.atSContact({ words, part });
}
