import type { IDBPObjectStore } from "idb";
import { isSoundId } from "../records/check/soundStored.ts";
import { copyStored, type StoredCheck } from "../records/check/storedCheck.ts";
import { farAhead } from "../records/text/moment.ts";
import * as messages from "../words/compiled/storage.ts";
import type { SayName } from "../words/message.ts";
import { openRow } from "./checkRow.ts";
import type { Database, StopfitDatabase, StoreName, WriteTransaction } from "./database.ts";
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
 * cannot be joined both are kept, the second under a name that `say` puts into words.
 */
export function joinedWith(
  mine: StoredCheck,
  current: StoredCheck | null,
  lineage: Lineage | null,
  say: SayName,
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
  const name = say(messages.savedFromAnotherTab({ name: mine.name }));
  return { ...copyStored(mine, name), revision: 1 };
}

type Rows = Pick<
  IDBPObjectStore<StopfitDatabase, StoreName[], "checks", IDBTransactionMode>,
  "getAllKeys" | "index"
>;

/** Keys of rows whose id is none, and of those dated far ahead, which would stay the newest for ever. */
export async function unsoundKeys(checks: Rows): Promise<IDBValidKey[]> {
  const keys = await checks.getAllKeys();
  const ahead = await checks.index("updatedAt").getAllKeys(IDBKeyRange.lowerBound(farAhead()));
  return [...new Set<IDBValidKey>([...keys.filter((key) => !isSoundId(key)), ...ahead])];
}

/** What is to be done before the checks can be listed: mostly nothing, which takes no write to find out. */
export async function whatWaits(
  database: Database,
): Promise<{ readonly unjoined: number; readonly unsound: readonly IDBValidKey[] }> {
  const names: StoreName[] = ["checks", "unjoined"];
  const reading = database.transaction(names);
  const unjoined = await reading.objectStore("unjoined").count();
  return { unjoined, unsound: await unsoundKeys(reading.objectStore("checks")) };
}
