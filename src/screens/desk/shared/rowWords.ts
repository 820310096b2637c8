import { takerOf } from "../../../engine/handsSeen.ts";
import type { DeskCheck } from "../../../records/review/decision.ts";
import * as messages from "../../../words/compiled/screens/desk/shared.ts";
import { isNotFetched } from "./notFetched.ts";
import type { Shared } from "./useShared.ts";

/** What the shared desk adds to a row: who has it or looks at it, a reply that nobody fetched. */
export function toldOf(
  { hands, replies, state }: Pick<Shared, "hands" | "replies" | "state">,
  { latest, decidedBy }: DeskCheck,
): string | null {
  const here = hands.get(latest.checkId) ?? [];
  const taker = takerOf(here);
  if (taker)
    return taker.person === state?.person
      ? messages.takenByYou
      : messages.takenBy({ person: taker.person });
  const others = here.filter(({ person }) => person !== state?.person);
  if (others.length > 0)
    return messages.looksAtIt({ others: others.map(({ person }) => person).join(", ") });
  const reply = decidedBy === undefined ? undefined : replies.get(decidedBy);
  return reply && isNotFetched(reply) ? messages.replyNotFetched : null;
}

/** One key takes a check, and gives it back. */
export function takeOrGiveBack({ hands, state, hand }: Shared, checkId: string): void {
  const mine = (hands.get(checkId) ?? []).some(
    ({ person, does }) => person === state?.person && does === "took",
  );
  hand(checkId, "took", !mine);
}
