import { entriesWithChoices } from "../../records/check/choicesAmongEntries.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { contentDigest, MarkStore, type Safekeeping } from "../../storage/markStore.ts";

export const nothingSafe: Safekeeping = { lastBackupAt: null, safe: new Map(), askedAt: null };

function hasContent(check: ListedCheck): boolean {
  const held = Object.values(entriesWithChoices(check));
  return check.name.trim() !== "" || held.some(({ texts }) => texts.some(Boolean));
}

/** Checks with something in them that is nowhere but here: changed since they were saved or sent. */
export function onlyHere(
  checks: readonly ListedCheck[],
  { safe }: Safekeeping,
): readonly ListedCheck[] {
  return checks.filter((check) => hasContent(check) && safe.get(check.id) !== contentDigest(check));
}

/** This check left the phone as it is: it was sent, or saved as a file. */
export async function markSent(stored: StoredCheck): Promise<void> {
  const marks = new MarkStore();
  await marks.markSafe([stored]);
  marks.close();
}
