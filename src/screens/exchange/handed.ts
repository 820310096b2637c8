import type { Reply } from "../../records/review/reply.ts";

/** What was opened from the list and is shown here before anything of it is kept. */
export interface Handed {
  readonly replies: readonly Reply[];
  readonly backup: File | null;
}

let handed: Handed | null = null;

export function handReceived(received: Handed): void {
  handed = received;
}

export function takeHanded(): Handed | null {
  const received = handed;
  handed = null;
  return received;
}
