import { type Fault, type Outcome, succeed } from "../../../physics/outcome.ts";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { Reply } from "../../../records/review/reply.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import { ReplyStore } from "../../../storage/replyStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/reply.ts";
import { markReplies } from "./repliesHere.ts";

/** What a reading's entry holds, as one text: differs as soon as something else is typed. */
export function entryText(stored: Pick<ListedCheck, "entries">, id: string): string {
  const entry = stored.entries[id];
  return entry === undefined ? "" : JSON.stringify([entry.texts, entry.unit, entry.tol]);
}

/** The check on this phone that a reply is about; null where there is none. */
export async function checkOfReply(
  store: CheckStore,
  { checkId }: Reply,
): Promise<Outcome<StoredCheck | null>> {
  const list = await store.list();
  if (!list.ok) return list;
  const versions = list.value.filter(({ id, record }) => id === checkId || record.id === checkId);
  const found = versions.find(({ id }) => id === checkId) ?? versions[0];
  return found === undefined ? succeed(null) : store.get(found.id);
}

export function replyWithoutCheck({ vehicle, axle }: Reply): Fault {
  return {
    code: "replyWithoutCheck",
    sentence: [messages.thisIsReplyAbout({ vehicle, axle })],
  };
}

/** Keeps a reply with its check: only once a person has read what it is and said so. */
export async function keepReply(
  stored: StoredCheck,
  reply: Reply,
  fromDesk = false,
): Promise<Outcome<null>> {
  const before = Object.fromEntries(reply.readings.map((id) => [id, entryText(stored, id)]));
  const replies = new ReplyStore();
  const kept = await replies.add({
    id: reply.id,
    storedId: stored.id,
    reply,
    before,
    same: [],
    closed: 0,
    keptAt: new Date().toISOString(),
    ...(fromDesk && { fromDesk }),
  });
  replies.dispose();
  if (!kept.ok) return kept;
  markReplies();
  return succeed(null);
}
