import type { AwayTexts } from "./awayTexts.ts";
import { openRow, putCheck } from "./checkRow.ts";
import type { WriteTransaction } from "./database.ts";
import { afterClockOf, currentOf, joinedWith } from "./joinedRows.ts";
import { contentOf, isSame } from "./sameContent.ts";

/** Hands texts put away to the database, to be joined there; gives those to be forgotten once that is done. */
export async function takeTexts(
  texts: AwayTexts,
  transaction: WriteTransaction,
): Promise<readonly string[]> {
  const unjoined = transaction.objectStore("unjoined");
  const places = texts.places();
  for (const place of places) {
    const key = texts.keyAt(place);
    const away = texts.read(place);
    // Where the database has the same, it has it with all its pictures.
    if (away && (await unjoined.getKey(key)) === undefined) await unjoined.put({ ...away, key });
  }
  return places;
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
