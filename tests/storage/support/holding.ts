import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import type { Entry } from "../../../src/records/entry/entry.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";

export const fresh: StoredCheck = {
  ...newStoredCheck("Bay 1"),
  updatedAt: "2026-05-04T08:00:00.000Z",
};
export const typed = (stored: StoredCheck, id: string, text: string, more: Partial<Entry> = {}) =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1", ...more });
export const corner = (stored: StoredCheck, side: "left" | "right" = "left") =>
  stored.record.corners.find((each) => each.side === side);

/** A check of which the record has these fields, and the entries these texts. */
export function holding(
  record: object,
  texts: { readonly [id: string]: string } = {},
): StoredCheck {
  const entries = Object.entries(texts).map(
    ([id, text]) => [id, { texts: [text], unit: "", tol: "" }] as const,
  );
  return {
    ...fresh,
    record: { ...fresh.record, ...record },
    entries: { ...fresh.entries, ...Object.fromEntries(entries) },
  };
}

/** The first text of each entry. */
export const textsOf = ({ entries }: StoredCheck) =>
  Object.fromEntries(Object.entries(entries).map(([id, { texts }]) => [id, texts[0]]));
