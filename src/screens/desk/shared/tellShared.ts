import type { EngineConnection } from "../../../engine/connection.ts";
import { erasePersonal } from "../../../engine/erase.ts";
import { publish } from "../../../engine/publish.ts";
import { subjectOf } from "../../../engine/subjects.ts";
import type { Fault } from "../../../physics/outcome.ts";
import { readCheckText } from "../../../records/check/readCheck.ts";
import { eventText } from "../../../records/exchanged/deskMessages.ts";
import { canonicalText } from "../../../records/text/canonicalText.ts";
import type { ToShare } from "../../../storage/deskDatabase.ts";
import type { DeskStore } from "../../../storage/deskStore.ts";
import * as messages from "../../../words/compiled/screens/desk/shared.ts";
import { loadReferencePack, referencePack } from "../../referencePack.ts";
import { replyOf } from "../replyItems.ts";

/** The pack in use here, as it is by now; one that is too large stays with this desk. An earlier one can be offered again. */
async function offerPack(connection: EngineConnection, id: string): Promise<Fault | null> {
  await loadReferencePack();
  const body = canonicalText(referencePack());
  const subject = subjectOf.pack(connection.name, id);
  const put = await publish(connection, { subject, hash: `pack ${id}`, body });
  return put.ok || put.fault.code === "tooLarge" ? null : put.fault;
}

async function tellOne(
  store: DeskStore,
  connection: EngineConnection,
  { kind, checkId, id, at }: ToShare,
): Promise<Fault | null> {
  const put = async (subject: string, body: string): Promise<Fault | null> => {
    const done = await publish(connection, { subject, hash: `${kind} ${id}`, body });
    return done.ok ? null : done.fault;
  };
  if (kind === "pack") return offerPack(connection, id);
  if (kind === "erase") {
    const erased = await erasePersonal(connection, checkId);
    if (!erased.ok) return erased.fault;
    const subject = subjectOf.decision(connection.name, checkId, id);
    return put(subject, eventText({ kind: "erased", checkId, at }));
  }
  const found = await store.shared.decision(id);
  if (!found.ok) return found.fault;
  const decision = found.value;
  if (decision === null) return null;
  if (kind === "decision") {
    const subject = subjectOf.decision(connection.name, checkId, id);
    const { shared: _, ...told } = decision;
    return put(subject, eventText({ kind: "decision", decision: told }));
  }
  const [sent, text] = await Promise.all([
    store.shared.sentByOf(decision.submission),
    store.text(decision.submission),
  ]);
  if (!sent.ok) return sent.fault;
  const read = readCheckText((text.ok && text.value) || "", messages.check);
  const reply = read.ok ? replyOf(read.value, decision) : null;
  if (sent.value === null || reply === null) return null;
  return put(subjectOf.reply(sent.value.sender, checkId), JSON.stringify(reply));
}

/** Tells the shared desk what was decided here, in order; the fault, where it could not. */
export async function tellShared(
  store: DeskStore,
  connection: EngineConnection,
): Promise<Fault | null> {
  for (;;) {
    const waiting = await store.shared.toShare();
    if (!waiting.ok) return waiting.fault;
    const [next] = waiting.value;
    if (next === undefined) return null;
    const fault = await tellOne(store, connection, next);
    if (fault !== null) return fault;
    const told = await store.shared.told(next.key);
    if (!told.ok) return told.fault;
  }
}
