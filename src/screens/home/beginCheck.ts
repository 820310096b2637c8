import { changeRecord, newStoredCheck } from "../../records/check/storedCheck.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { goTo, stepHref } from "../addresses.ts";
import type { Preferences } from "../preferences.ts";
import { noteCount } from "../saved/savedCount.ts";
import { authorNow } from "../storedPreferences.ts";

/** A new check, open at its first step; `before`: how many were here, where that is known. */
export async function beginCheck(
  store: CheckStore,
  preferences: Preferences,
  before: number | null,
): Promise<void> {
  const author = authorNow(preferences);
  const fresh = newStoredCheck();
  const check = author ? changeRecord(fresh, (record) => ({ ...record, author })) : fresh;
  // Where nothing can be kept the check goes on in memory, and its screen offers the file.
  const outcome = await store.put(check);
  if (outcome.ok && before !== null) noteCount(before + 1);
  goTo(stepHref(check.id, "vehicle"));
}
