import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { isReading, recordWithEntry } from "../entry/entryPath.ts";
import { chosen } from "./choice.ts";

function isTypedAnew(before: Entry | undefined, after: Entry): boolean {
  return after.texts.join("\n") !== (before?.texts ?? []).join("\n") || after.unit !== before?.unit;
}

/** The readings typed since `before`, among those wanted, with the name of who measures. */
function typedSince(
  before: StoredCheck,
  after: StoredCheck,
  by: string | null,
  isWanted: (id: string) => boolean,
): readonly (readonly [id: string, signed: Entry])[] {
  if (before.entries === after.entries) return [];
  return Object.entries(after.entries).flatMap(([id, entry]) => {
    const isTyped =
      entry !== before.entries[id] &&
      isReading(id) &&
      isWanted(id) &&
      (entry.by ?? null) !== by &&
      isTypedAnew(before.entries[id], entry);
    const { by: _, ...unsigned } = entry;
    return isTyped ? [[id, by === null ? unsigned : { ...unsigned, by }] as const] : [];
  });
}

const isOfFullTravel = (id: string): boolean => id.startsWith("fullTravel.");

/**
 * The check with the name of who measures at every reading that was typed since `before`. What a pack
 * gave when a stop was chosen was typed by nobody; what is found by hand is signed as it is typed.
 */
export function stampedBy(before: StoredCheck, after: StoredCheck, by: string | null): StoredCheck {
  const chosenAnew = chosen(before, "stop.packId") !== chosen(after, "stop.packId");
  const typed = typedSince(
    before,
    after,
    by,
    (id) => !(chosenAnew && id.startsWith("stop.")) && !isOfFullTravel(id),
  );
  if (typed.length === 0) return after;
  const entries = { ...after.entries, ...Object.fromEntries(typed) };
  const record = typed.reduce(
    (current, [id, entry]) => recordWithEntry(current, id, entry, entries),
    after.record,
  );
  return { ...after, entries, record };
}

/** The same of what was typed in the full-travel check; its field of the record follows the entries. */
export function withFullTravelSigned(
  before: StoredCheck,
  after: StoredCheck,
  by: string | null,
): StoredCheck {
  const typed = typedSince(before, after, by, isOfFullTravel);
  return typed.length === 0
    ? after
    : { ...after, entries: { ...after.entries, ...Object.fromEntries(typed) } };
}
