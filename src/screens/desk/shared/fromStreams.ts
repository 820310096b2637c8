import type { Pool } from "../../../compute/pool.ts";
import type { Arrived } from "../../../engine/follow.ts";
import { subjectParts } from "../../../engine/subjects.ts";
import { readDeskEvent } from "../../../records/exchanged/deskMessages.ts";
import { readReplyText } from "../../../records/review/readReply.ts";
import type { FromStream } from "../../../storage/sharedCopy.ts";
import * as messages from "../../../words/compiled/screens/desk/shared.ts";

/**
 * What a stream brought, read by the same rules as whatever comes in, in the pool. What is not sound is left
 * out: it stays in the stream, where nobody can take it out.
 */
export async function fromStreams(
  pool: Pool,
  batch: readonly Arrived[],
): Promise<readonly FromStream[]> {
  const things = await Promise.all(batch.map((message) => thingOf(pool, message)));
  return things.filter((thing) => thing !== null);
}

async function thingOf(
  pool: Pool,
  { subject, sequence, body, at }: Arrived,
): Promise<FromStream | null> {
  const { kind, by, check, key } = subjectParts(subject);
  if (kind === "fetched") return { kind, reply: key, sender: by, at };
  if (kind === "decision") {
    const event = readDeskEvent(body, { person: by, checkId: check, key, sequence });
    return event.ok ? event.value : null;
  }
  if (kind === "reply") {
    const reply = readReplyText(body, messages.reply);
    if (!reply.ok || reply.value.checkId !== check) return null;
    const { id, from } = reply.value;
    return { kind, reply: { id, checkId: check, sender: by, from, at } };
  }
  if (kind !== "inbox" && kind !== "personal") return null;
  const done = await pool.run({ kind: "sent", body });
  if (done.kind !== "sent" || !done.part.ok) return null;
  const part = done.part.value;
  if (part.kind === "readings") {
    // Under another check's number nothing is taken.
    if (kind !== "inbox" || done.incoming === null || part.record.id !== check) return null;
    const { personal, photos } = part;
    return {
      kind: "readings",
      incoming: done.incoming,
      sender: by,
      personal,
      photos,
      sequence,
      at,
    };
  }
  if (kind !== "personal" || part.checkId !== check) return null;
  const { checkId } = part;
  return part.kind === "photo"
    ? { kind: "personal", hash: key, checkId, at, photo: part.photo }
    : { kind: "personal", hash: key, checkId, at, texts: part.texts };
}
