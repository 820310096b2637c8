import type { Fault } from "../physics/outcome.ts";
import { readReplyText } from "../records/review/readReply.ts";
import type { OutboxStore, PlacedPart } from "../storage/outboxStore.ts";
import * as messages from "../words/compiled/engine.ts";
import type { DeskAddress } from "./address.ts";
import { connectEngine, type Dial, type EngineConnection } from "./connection.ts";
import { fetchReply } from "./fetchReply.ts";
import { newPhoneKey, phoneLogin } from "./login.ts";
import { publish } from "./publish.ts";
import { subjectOf } from "./subjects.ts";

const subjects = {
  readings: subjectOf.readings,
  personal: subjectOf.personal,
  photo: subjectOf.personal,
  fetched: subjectOf.fetched,
} as const;

async function sendPart(
  connection: EngineConnection,
  store: OutboxStore,
  part: PlacedPart,
): Promise<Fault | null> {
  const subject = subjects[part.kind](connection.publicKey, part.checkId, part.hash);
  const put = await publish(connection, { subject, hash: part.hash, body: part.body });
  if (!put.ok) return put.fault;
  const noted = await store.acknowledged(part);
  return noted.ok ? null : noted.fault;
}

/** Sends what waits, in order; one that is too large for the desk does not hold up the others. */
async function sendAll(connection: EngineConnection, store: OutboxStore): Promise<Fault | null> {
  let after = 0;
  let trouble: Fault | null = null;
  for (;;) {
    const next = await store.waiting(after);
    if (!next.ok) return next.fault;
    const [part] = next.value;
    if (part === undefined) return trouble;
    const fault = await sendPart(connection, store, part);
    if (fault !== null && fault.code !== "tooLarge") return fault;
    trouble ??= fault;
    after = part.place;
  }
}

/** Fetches the newest reply to each check that was received, and says so to the desk. */
async function fetchAll(connection: EngineConnection, store: OutboxStore): Promise<Fault | null> {
  const sent = await store.sent();
  if (!sent.ok) return sent.fault;
  for (const [checkId, { state }] of sent.value) {
    if (state === "waiting") continue;
    const fetched = await fetchReply(connection, checkId);
    if (!fetched.ok) return fetched.fault;
    if (fetched.value === null) continue;
    const reply = readReplyText(fetched.value, messages.reviewDesksReply);
    // A reply that can't be read, or is about another check, is passed over.
    if (!reply.ok || reply.value.checkId !== checkId) continue;
    const at = new Date().toISOString();
    const { id } = reply.value;
    const kept = await store.keepReply({ id, checkId, text: fetched.value, at, seen: 0 });
    if (!kept.ok) return kept.fault;
    if (kept.value) await store.queueFetched(checkId, id, JSON.stringify({ reply: id, at }));
  }
  return null;
}

/** One errand to the desk and back: what waits is sent, replies are fetched. The fault, where it failed. */
export async function sendOutbox(
  store: OutboxStore,
  address: DeskAddress,
  dial: Dial,
): Promise<Fault | null> {
  const key = await store.phoneKey(newPhoneKey);
  if (!key.ok) return key.fault;
  const login = await phoneLogin(key.value, address);
  if (!login.ok) return login.fault;
  const connection = await connectEngine({
    servers: address.url,
    login: login.value,
    dial,
    stay: false,
  });
  let fault: Fault | null;
  if (connection.ok) {
    fault = await sendAll(connection.value, store);
    fault ??= await fetchAll(connection.value, store);
    // What was just fetched is told at once.
    fault ??= await sendAll(connection.value, store);
    await connection.value.nats.close();
  } else fault = connection.fault;
  await store.noteTrouble(fault === null ? null : fault.sentence);
  return fault;
}
