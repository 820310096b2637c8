import type { Outcome } from "../physics/outcome.ts";
import type { EngineConnection } from "./connection.ts";
import { engineFault, faultOf } from "./engineFaults.ts";
import { streams, subjectOf } from "./subjects.ts";

const waitMs = 8000;

/** The newest reply to one check of this phone, as text; null: none yet. */
export async function fetchReply(
  { nats, publicKey }: EngineConnection,
  check: string,
): Promise<Outcome<string | null>> {
  const subject = `$JS.API.DIRECT.GET.${streams.replies}.${subjectOf.reply(publicKey, check)}`;
  try {
    const answer = await nats.request(subject, undefined, { timeout: waitMs });
    const code = answer.headers?.code ?? 0;
    if (code === 404) return { ok: true, value: null };
    if (code !== 0) return { ok: false, fault: engineFault("deskBusy") };
    return { ok: true, value: answer.string() };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  }
}
