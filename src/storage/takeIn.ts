import { checkName } from "../records/check/checkName.ts";
import { newId, type StoredCheck } from "../records/check/storedCheck.ts";
import * as messages from "../words/compiled/storage.ts";
import type { SayName } from "../words/message.ts";
import { putCheck } from "./checkRow.ts";
import type { WriteTransaction } from "./database.ts";
import { currentOf } from "./joinedRows.ts";
import { replacesSomething } from "./sameContent.ts";

/** The same `current` where the backup brings nothing to it. */
export type Join = (current: StoredCheck, backup: StoredCheck) => StoredCheck;

/** What became of a backup's check: added, joined with the one here, or nothing new in it. */
export type TakenIn =
  | { readonly kind: "added" | "present" }
  | {
      readonly kind: "joined";
      /** What was here until then. */
      readonly before: StoredCheck;
      /** Where something of it was replaced: its copy among the deleted checks, by its id. */
      readonly aside: string | null;
    };

export async function takeInto(
  transaction: WriteTransaction,
  backup: StoredCheck,
  join: Join,
  say: SayName,
): Promise<TakenIn> {
  const current = await currentOf(transaction, backup.id);
  if (current === null) {
    await putCheck(transaction, { ...backup, revision: backup.revision ?? 1 });
    return { kind: "added" };
  }
  const joined = join(current, backup);
  if (joined === current) return { kind: "present" };
  const aside = replacesSomething(current, joined) ? copyAside(current, say) : null;
  if (aside !== null) await putCheck(transaction, aside);
  const counts = [current.revision ?? 0, backup.revision ?? 0];
  await putCheck(transaction, { ...joined, revision: Math.max(...counts) + 1 });
  return { kind: "joined", before: current, aside: aside?.id ?? null };
}

/** What a backup replaces, among the deleted checks, where it can be brought back. */
function copyAside(current: StoredCheck, say: SayName): StoredCheck {
  const { revision: _, deletedAt: _deleted, again: _walk, ...content } = current;
  const name = say(messages.beforeBackupWasRestored({ checkName: checkName(current) }));
  return { ...content, id: newId(), name, deletedAt: new Date().toISOString(), revision: 1 };
}
