import { checkName } from "../records/check/checkName.ts";
import { isSoundId } from "../records/check/soundStored.ts";
import { copyStored, newId, type StoredCheck } from "../records/check/storedCheck.ts";
import { farAhead } from "../records/text/moment.ts";
import { healRow, openRow, putCheck } from "./checkRow.ts";
import type { WriteTransaction } from "./database.ts";
import { joining } from "./joining.ts";
import { contentOf, isSame } from "./sameContent.ts";

/** What this tab last handed in or was handed for a check, and the version stored then. */
export interface Lineage {
  readonly id: string;
  readonly content: StoredCheck;
  readonly revision: number;
  /** What was stored then holds more than the content: another tab's was joined in. */
  readonly joined: boolean;
}

/** What is stored of a check now; pictures of the versions at hand are not read again. */
export async function currentOf(
  transaction: WriteTransaction,
  id: string,
  atHand: readonly (StoredCheck | null)[] = [],
): Promise<StoredCheck | null> {
  const row = await transaction.objectStore("checks").get(id);
  return openRow(row, transaction.objectStore("pictures"), atHand);
}

/** `next`, later than what it takes the place of also where the clock was set back meanwhile. */
export function afterClockOf(current: StoredCheck | null, next: StoredCheck): StoredCheck {
  if (current === null || next.id !== current.id || next.updatedAt > current.updatedAt) return next;
  if (isSame(contentOf(next), contentOf(current))) return next;
  const updatedAt = new Date(Date.parse(current.updatedAt) + 1).toISOString();
  return { ...next, updatedAt };
}

/**
 * What to store for `mine`, where `current` is stored and `lineage` is what mine grew from. Where the two
 * cannot be joined both are kept.
 */
export function joinedWith(
  mine: StoredCheck,
  current: StoredCheck | null,
  lineage: Lineage | null,
): StoredCheck {
  const revision = (current?.revision ?? 0) + 1;
  if (current === null) return { ...mine, revision };
  const storedSince = lineage === null ? mine.revision : lineage.revision;
  if (current.revision === storedSince && lineage?.joined !== true) return { ...mine, revision };
  const join = joining();
  if (lineage !== null && join !== null) {
    // A write that was held up must not take the place of what was typed after it in another tab.
    const inOrder = mine.updatedAt < current.updatedAt ? [current, mine] : [mine, current];
    const [newer = mine, older = current] = inOrder;
    return { ...join(lineage.content, newer, older), revision };
  }
  if (isSame(contentOf(mine), contentOf(current))) return { ...mine, revision };
  return { ...copyStored(mine, `${mine.name} (saved from another tab)`), revision: 1 };
}

/** Rows whose id is none, and those dated far ahead, which would stay the newest for ever. */
export async function healRows(transaction: WriteTransaction): Promise<void> {
  const checks = transaction.objectStore("checks");
  const keys = await checks.getAllKeys();
  const ahead = await checks.index("updatedAt").getAllKeys(IDBKeyRange.lowerBound(farAhead()));
  const wrong = new Set<IDBValidKey>([...keys.filter((key) => !isSoundId(key)), ...ahead]);
  for (const key of wrong) await healRow(transaction, key);
}

/** Joins what pages put away as they went: all of it at once, so that nothing is joined twice. */
export async function joinUnjoined(transaction: WriteTransaction): Promise<void> {
  const unjoined = transaction.objectStore("unjoined");
  const pictures = transaction.objectStore("pictures");
  for (const { key, stored: given, base: from } of await unjoined.getAll()) {
    const stored = await openRow(given, pictures);
    const base = await openRow(from, pictures);
    if (stored !== null) {
      const current = await currentOf(transaction, stored.id);
      const lineage =
        base === null ? null : { id: stored.id, content: base, revision: -1, joined: true };
      const isKept = current !== null && isSame(contentOf(current), contentOf(stored));
      if (!isKept) {
        await putCheck(transaction, afterClockOf(current, joinedWith(stored, current, lineage)));
      }
    }
    await unjoined.delete(key);
  }
}

/** What a backup replaces, among the deleted checks, where it can be brought back. */
export function copyAside(current: StoredCheck): StoredCheck {
  const { revision: _, deletedAt: _deleted, again: _walk, ...content } = current;
  const name = `${checkName(current)} (before a backup was restored)`;
  return { ...content, id: newId(), name, deletedAt: new Date().toISOString(), revision: 1 };
}
