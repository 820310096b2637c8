import type { Outcome } from "../physics/outcome.ts";
import type { SayName } from "../words/message.ts";
import type { AwayTexts } from "./awayTexts.ts";
import { openRow, putCheck } from "./checkRow.ts";
import { healRow } from "./damagedRow.ts";
import type { UnjoinedCheck, WriteTransaction } from "./database.ts";
import { afterClockOf, currentOf, joinedWith, unsoundKeys } from "./joinedRows.ts";
import { fetchJoining } from "./joining.ts";
import { contentOf, isSame } from "./sameContent.ts";

/** What a text puts away; null where it is none. */
function readAway(text: string | null): Omit<UnjoinedCheck, "key"> | null {
  try {
    const { stored, base } = JSON.parse(text ?? "");
    return { stored, base };
  } catch {
    return null;
  }
}

/** Hands texts put away to the database, to be joined there; gives those to be forgotten once that is done. */
async function takeTexts(
  texts: AwayTexts,
  transaction: WriteTransaction,
): Promise<readonly string[]> {
  const unjoined = transaction.objectStore("unjoined");
  const places = texts.places();
  for (const place of places) {
    const key = place.slice(texts.mark.length);
    const away = readAway(localStorage.getItem(place));
    // Where the database has the same, it has it with all its pictures.
    if (away && (await unjoined.getKey(key)) === undefined) await unjoined.put({ ...away, key });
  }
  return places;
}

/** Joins what pages put away as they went: all of it at once, so that nothing is joined twice. */
async function joinUnjoined(transaction: WriteTransaction, say: SayName): Promise<void> {
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
        const joined = joinedWith(stored, current, lineage, say);
        await putCheck(transaction, afterClockOf(current, joined));
      }
    }
    await unjoined.delete(key);
  }
}

/** Puts right what no address, list or clock can take; what can't be healed stays as it is. */
async function healRows(transaction: WriteTransaction): Promise<void> {
  for (const key of await unsoundKeys(transaction.objectStore("checks"))) {
    await healRow(transaction, key);
  }
}

/** What is to be done before the checks can be listed. What can't be healed is set aside by the list. */
export async function joinWaiting(
  texts: AwayTexts,
  write: <Value>(
    work: (transaction: WriteTransaction) => Promise<Value>,
  ) => Promise<Outcome<Value>>,
  say: SayName,
): Promise<void> {
  await fetchJoining();
  const joined = await write(async (transaction) => {
    const places = await takeTexts(texts, transaction);
    await joinUnjoined(transaction, say);
    return places;
  });
  if (joined.ok) for (const place of joined.value) localStorage.removeItem(place);
  await write(healRows);
}
