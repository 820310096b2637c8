import type { ReplyAtDesk } from "../../../storage/deskDatabase.ts";

const patienceMs = 2 * 24 * 60 * 60 * 1000;

/** Two days at the desk, and its phone has not come for it. */
export function isNotFetched({ at, fetchedAt }: ReplyAtDesk, now = Date.now()): boolean {
  return at !== "" && fetchedAt === undefined && now - Date.parse(at) > patienceMs;
}
