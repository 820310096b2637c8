import { settle } from "./readings/cornerReadings.ts";
import { definitionOf } from "./readings/definitionOf.ts";
import type { LimitKind } from "./readings/limitReadings.ts";
import { sideOf } from "./readings/readingId.ts";

export { limitTouches } from "./readings/limitReadings.ts";

/** What takes part in the doubt without being read: its place in a sentence. */
const derivedNames: Readonly<Record<string, string>> = { linkage: "linkage", settle: settle.name };

/**
 * A reading's name in plain words with its article and, where it has one, its side: "the left gap",
 * "the arm angle". A hard limit is named by its kind where that is given. An id that is not known is
 * named by its last part, so that a sentence is never empty.
 */
export function readingName(id: string, limitKind?: LimitKind): string {
  const side = sideOf(id);
  const last = id.slice(id.lastIndexOf(".") + 1);
  const derived = Object.hasOwn(derivedNames, last) ? derivedNames[last] : undefined;
  const name = derived ?? definitionOf(id, limitKind)?.name ?? last;
  return `the ${side === null ? "" : `${side} `}${name}`;
}
