import { checkName } from "../../../records/check/checkName.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { readingsDigest } from "../../../records/review/readingsDigest.ts";
import { readReplyText } from "../../../records/review/readReply.ts";
import { said } from "../../../saying/texts.ts";
import type { CameIn } from "../../../storage/outboxDatabase.ts";
import type { SentCheck } from "../../../storage/outboxStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/maker.ts";
import { goTo } from "../../addresses.ts";
import { handReceived } from "../handed.ts";
import { openHref } from "../shareRoutes.ts";
import { beginOutbox, outbox } from "./outboxRun.ts";
import type { Sent, UnseenAnswer } from "./sent.ts";

/** Shows an answer of the desk, as whatever comes in is shown before it is kept. */
export async function openAnswer({ id, text }: CameIn): Promise<void> {
  await outbox().markSeen(id);
  const reply = readReplyText(text, messages.answer);
  if (!reply.ok) return;
  handReceived({ replies: [reply.value], backup: null, fromDesk: true });
  goTo(openHref);
}

/** Pictures are in no digest, so a check as a list has it will do. */
function digestOf({ record, ...check }: ListedCheck): string | null {
  const { photos: _, ...bare } = record;
  const completion = completeRecord({ ...check, record: bare } as StoredCheck);
  return completion.ok ? readingsDigest(completion.value) : null;
}

/** Where a check stands, in a row of the list. */
function sentWords({ state, newest }: SentCheck, digest: string | null): string {
  if (digest !== null && digest !== newest.digest) return messages.changedSinceItWas;
  if (state === "waiting") return messages.waitsToBeSent;
  return state === "answered" ? messages.answered : messages.receivedByReviewDesk;
}

/** Tells where each check of the list stands at the desk, and goes on telling as that changes. */
export function followSent(
  checks: readonly ListedCheck[],
  onSent: (sent: Sent) => void,
): () => void {
  const store = outbox();
  const look = async () => {
    const all = await store.sent();
    if (!all.ok) return;
    const words = new Map<string, string>();
    const answers: UnseenAnswer[] = [];
    for (const check of checks) {
      const sent = all.value.get(check.record.id);
      if (!sent) continue;
      words.set(check.id, sentWords(sent, digestOf(check)));
      const { reply } = sent;
      if (reply?.seen === 0) {
        answers.push({
          id: reply.id,
          about: said(checkName(check)),
          open: () => openAnswer(reply),
        });
      }
    }
    onSent({ words, answers });
  };
  look();
  const stop = store.subscribe(look);
  beginOutbox();
  return stop;
}
