import type { SentCheck } from "../../../storage/outboxStore.ts";

/** Where a check stands, in a row of the list. */
export function sentWords({ state, newest }: SentCheck, digest: string | null): string {
  if (digest !== null && digest !== newest.digest) return "Changed since it was sent";
  if (state === "waiting") return "Waits to be sent";
  return state === "answered" ? "Answered" : "Received by the review desk";
}
