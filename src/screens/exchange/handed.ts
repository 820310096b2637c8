import type { Reply } from "../../records/review/reply.ts";

/** What was opened from the list and is shown here before anything of it is kept. */
export interface Handed {
  readonly replies: readonly Reply[];
  readonly backup: File | null;
  /** Fetched from the desk itself, by this phone's own key: nobody else can have sent it. */
  readonly fromDesk?: boolean;
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
