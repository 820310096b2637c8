import { jetstream } from "@nats-io/jetstream";
import type { Outcome } from "../physics/outcome.ts";
import type { EngineConnection } from "./connection.ts";
import { engineFault, faultOf, isThereAlready } from "./engineFaults.ts";
import { greatestMessage } from "./subjects.ts";

/** What the engine has on disk, on most of its nodes. */
export interface Acknowledged {
  /** The place in its stream; null where it was there from before. */
  readonly sequence: number | null;
}

/** One message as it goes, with the hash of its content: sent again it is the same message. */
export interface Outgoing {
  readonly subject: string;
  readonly hash: string;
  readonly body: string;
}

const ackMs = 10_000;
const bytes = new TextEncoder();

/** Puts a message into its stream. It counts as there once the engine says so, never before. */
export async function publish(
  { nats }: EngineConnection,
  { subject, hash, body }: Outgoing,
  { timeout = ackMs }: { readonly timeout?: number } = {},
): Promise<Outcome<Acknowledged>> {
  const payload = bytes.encode(body);
  if (payload.length > greatestMessage) return { ok: false, fault: engineFault("tooLarge") };
  try {
    const ack = await jetstream(nats).publish(subject, payload, { msgID: hash, timeout });
    return { ok: true, value: { sequence: ack.seq } };
  } catch (error) {
    if (isThereAlready(error)) return { ok: true, value: { sequence: null } };
    return { ok: false, fault: faultOf(error) };
  }
}
