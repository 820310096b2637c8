import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry, EntryKey } from "../entry/entry.ts";
import { setEntry } from "./changes.ts";

const asideId = (id: EntryKey): EntryKey => `aside.${id}`;

/** The check without this reading, in its record and as typed. */
export function withoutReading(stored: StoredCheck, id: EntryKey): StoredCheck {
  const entry = stored.entries[id];
  if (entry === undefined) return stored;
  const emptied = setEntry(stored, id, { ...entry, texts: [""] });
  const { [id]: _, ...entries } = emptied.entries;
  return { ...emptied, entries };
}

/** The check without these readings in its record; what was typed for them waits beside it. */
export function setAside(stored: StoredCheck, ids: readonly EntryKey[]): StoredCheck {
  return ids.reduce((current, id) => {
    const entry = current.entries[id];
    if (entry === undefined) return current;
    const without = withoutReading(current, id);
    return { ...without, entries: { ...without.entries, [asideId(id)]: entry } };
  }, stored);
}

/** The check with these readings again, as far as they were ever typed. */
export function takeBack(stored: StoredCheck, ids: readonly EntryKey[]): StoredCheck {
  return ids.reduce(backInPlace, stored);
}

function backInPlace(stored: StoredCheck, id: EntryKey): StoredCheck {
  const entry: Entry | undefined = stored.entries[asideId(id)];
  if (entry === undefined || stored.entries[id] !== undefined) return stored;
  const { [asideId(id)]: _, ...entries } = stored.entries;
  return setEntry({ ...stored, entries }, id, entry);
}
