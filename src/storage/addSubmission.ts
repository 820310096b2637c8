import { contentText, type Incoming } from "../records/review/submission.ts";
import type { Writing } from "./deskDatabase.ts";

/** The list as it was put together last is no longer true. */
export async function countChange(transaction: Writing): Promise<void> {
  const snapshots = transaction.objectStore("snapshots");
  const revision = (await snapshots.get("revision"))?.revision ?? 0;
  await snapshots.put({ key: "revision", revision: revision + 1, text: "" });
}

/** The lists that were put together hold names, which have to go from there as well. */
export async function forgetLists(transaction: Writing): Promise<void> {
  for (const list of ["rows", "first"]) await transaction.objectStore("snapshots").delete(list);
  await countChange(transaction);
}

function isSameContent(one: string, other: string): boolean {
  return one === other || contentText(JSON.parse(one)) === contentText(JSON.parse(other));
}

/** Adds one version, where this very content is not here yet; its key, or null where it is. */
export async function addOne(
  transaction: Writing,
  { facts, text, way, photosLeftOut, sentAt, from, place }: Incoming,
  receivedAt: string,
): Promise<string | null> {
  const submissions = transaction.objectStore("submissions");
  const texts = transaction.objectStore("texts");
  let key = `${facts.checkId} ${facts.digest}`;
  // Two contents with one digest are not worth more than that they are both kept.
  for (;;) {
    const known = await texts.get(key);
    if (known === undefined) break;
    if (isSameContent(known.text, text)) return null;
    key = `${key}+`;
  }
  await texts.put({ key, text });
  await submissions.put({
    ...facts,
    key,
    receivedAt,
    ...(sentAt !== undefined && { sentAt }),
    ...(from !== undefined && { from }),
    ...(place !== undefined && { place }),
    way,
    photosLeftOut,
    isComputed: 0,
  });
  return key;
}
