import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";

/**
 * A choice made on a screen that no field of the record holds (which limits were looked for, how a
 * weight was come by): kept beside the typed entries, so that it is there after a reload.
 */
export function chosen(stored: StoredCheck, id: string): string | null {
  return stored.entries[id]?.texts[0] ?? null;
}

export function withChoice(stored: StoredCheck, id: string, value: string | null): StoredCheck {
  const entries: Record<string, Entry> = { ...stored.entries };
  if (value === null) delete entries[id];
  else entries[id] = { texts: [value], unit: "", tol: "" };
  return { ...stored, updatedAt: new Date().toISOString(), entries };
}
