import type { ReadingId } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import type { EarlierValue } from "./underWay.ts";

/** Do two entries hold the same values, ± and tool? */
export function isSameEntry(one: Entry | undefined, other: Entry | undefined): boolean {
  const content = (entry: Entry | undefined) =>
    entry && JSON.stringify([entry.texts, entry.unit, entry.tol, entry.tool, entry.reach]);
  return content(one) === content(other);
}

export function isBlank(entry: Entry | undefined): boolean {
  return entry === undefined || entry.texts.every((text) => text.trim() === "");
}

/** The check with an entry put among the earlier values of its reading. */
export function withEarlier(stored: StoredCheck, reading: ReadingId, entry: Entry): StoredCheck {
  if (isBlank(entry)) return stored;
  const until = new Date().toISOString();
  let key = `${reading} ${until}`;
  // A clock that stands or was set back gives the same moment twice.
  for (let count = 2; stored.earlier?.[key] !== undefined; count++) {
    key = `${reading} ${until} ${count}`;
  }
  return { ...stored, earlier: { ...stored.earlier, [key]: { reading, entry, until } } };
}

function isEarlierValue(value: unknown): value is EarlierValue {
  const { reading, entry, until } = (value ?? {}) as Partial<EarlierValue>;
  return typeof reading === "string" && typeof until === "string" && Array.isArray(entry?.texts);
}

/** What was read for this reading before, latest first; what is no earlier value is passed over. */
export function earlierOf(stored: StoredCheck, reading: ReadingId): readonly EarlierValue[] {
  return Object.values(stored.earlier ?? {})
    .filter((value) => isEarlierValue(value) && value.reading === reading)
    .reverse()
    .sort((a, b) => (a.until < b.until ? 1 : a.until > b.until ? -1 : 0));
}
