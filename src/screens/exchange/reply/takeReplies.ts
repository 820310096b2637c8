import { type Fault, fail, type Outcome, succeed } from "../../../physics/outcome.ts";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import type { Reply } from "../../../records/review/reply.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import { ReplyStore } from "../../../storage/replyStore.ts";
import { markReplies } from "./repliesHere.ts";

/** What a reading's entry holds, as one text: differs as soon as something else is typed. */
export function entryText(stored: Pick<ListedCheck, "entries">, id: string): string {
  const entry = stored.entries[id];
  return entry === undefined ? "" : JSON.stringify([entry.texts, entry.unit, entry.tol]);
}

async function checkOf(
  store: CheckStore,
  { checkId }: Reply,
): Promise<Outcome<ListedCheck | null>> {
  const list = await store.list();
  if (!list.ok) return list;
  const versions = list.value.filter(({ id, record }) => id === checkId || record.id === checkId);
  return succeed(versions.find(({ id }) => id === checkId) ?? versions[0] ?? null);
}

/** Keeps a reply with the check on this phone that it is about; gives that check's id here. */
async function keepReply(store: CheckStore, reply: Reply): Promise<Outcome<string>> {
  const found = await checkOf(store, reply);
  if (!found.ok) return found;
  const stored = found.value;
  if (stored === null) {
    return fail("replyWithoutCheck", [
      `This is a reply about ${reply.vehicle}, ${reply.axle} axle, but that check is not on this phone. Open it on the phone that made the check.`,
    ]);
  }
  const before = Object.fromEntries(reply.readings.map((id) => [id, entryText(stored, id)]));
  const replies = new ReplyStore();
  const kept = await replies.add({
    id: reply.id,
    storedId: stored.id,
    reply,
    before,
    same: [],
    closed: 0,
  });
  replies.dispose();
  if (!kept.ok) return kept;
  markReplies();
  return succeed(stored.id);
}

export interface KeptReplies {
  /** The checks on this phone that they are about, by their id here. */
  readonly storedIds: readonly string[];
  /** Why the others could not be kept. */
  readonly faults: readonly Fault[];
}

export async function keepReplies(
  store: CheckStore,
  replies: readonly Reply[],
): Promise<KeptReplies> {
  const storedIds: string[] = [];
  const faults: Fault[] = [];
  for (const reply of replies) {
    const kept = await keepReply(store, reply);
    if (kept.ok) storedIds.push(kept.value);
    else faults.push(kept.fault);
  }
  return { storedIds, faults };
}
