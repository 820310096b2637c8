import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { isReading, recordWithEntry } from "../entry/entryPath.ts";
import { chosen } from "./choice.ts";

function isTypedAnew(before: Entry | undefined, after: Entry): boolean {
  return after.texts.join("\n") !== (before?.texts ?? []).join("\n") || after.unit !== before?.unit;
}

/**
 * The check with the name of who measures at every reading that was typed since `before`. What a pack
 * gave when a stop was chosen was typed by nobody.
 */
export function stampedBy(before: StoredCheck, after: StoredCheck, by: string | null): StoredCheck {
  if (before.entries === after.entries) return after;
  const chosenAnew = chosen(before, "stop.packId") !== chosen(after, "stop.packId");
  const typed = Object.entries(after.entries).filter(
    ([id, entry]) =>
      entry !== before.entries[id] &&
      isReading(id) &&
      !(chosenAnew && id.startsWith("stop.")) &&
      !id.startsWith("fullTravel.") &&
      (entry.by ?? null) !== by &&
      isTypedAnew(before.entries[id], entry),
  );
  if (typed.length === 0) return after;
  const entries = { ...after.entries };
  let { record } = after;
  for (const [id, { by: _, ...entry }] of typed) {
    const own: Entry = by === null ? entry : { ...entry, by };
    entries[id] = own;
    record = recordWithEntry(record, id, own, entries);
  }
  return { ...after, entries, record };
}
