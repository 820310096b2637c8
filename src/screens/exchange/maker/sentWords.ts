import type { SentCheck } from "../../../storage/outboxStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/maker.ts";

/** Where a check stands, in a row of the list. */
export function sentWords({ state, newest }: SentCheck, digest: string | null): string {
  if (digest !== null && digest !== newest.digest) return messages.changedSinceItWas;
  if (state === "waiting") return messages.waitsToBeSent;
  return state === "answered" ? messages.answered : messages.receivedByReviewDesk;
}
