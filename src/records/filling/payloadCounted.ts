import type { StoredCheck } from "../check/storedCheck.ts";
import { entryText, parseText } from "../entry/entry.ts";
import type { EntryKind } from "../entry/readingCatalogue.ts";
import { setEntry } from "./changes.ts";
import { helperInputs } from "./helperInputs.ts";

/** One person with luggage, kg: 68 and 7 (ISO 2416, from memory). */
export const personKg = 68 + 7;

export const peopleId = "payload.people";
export const thingsId = "payload.things";

function counted(stored: StoredCheck, id: string, kind: EntryKind): number {
  const entry = stored.entries[id];
  if (entry === undefined) return 0;
  const parsed = parseText(entry.texts[0] ?? "", kind, entry.unit, "zeroOrMore");
  return parsed.ok ? parsed.value.value : 0;
}

/** The check with its whole load added up from people and things, in the unit things are weighed in. */
export function withCountedPayload(stored: StoredCheck): StoredCheck {
  const total = counted(stored, peopleId, "number") * personKg + counted(stored, thingsId, "mass");
  if (total === 0) return stored;
  const unit = stored.entries[helperInputs.payloadTotal.id]?.unit ?? stored.entries[thingsId]?.unit;
  const shown = unit === "lb" ? "lb" : "kg";
  return setEntry(stored, helperInputs.payloadTotal.id, {
    texts: [entryText(total, "mass", shown)],
    unit: shown,
    tol: "",
  });
}
