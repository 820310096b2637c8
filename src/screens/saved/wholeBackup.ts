import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { saveFile } from "../../sharing/saveFile.ts";
import { type Backup, makeBackup, markBackedUp } from "../../storage/backup.ts";
import { openCheckStore } from "../../storage/checkStore.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";

/** Everything kept here, the desk's and the phone's, as one file; not saved yet. */
export async function wholeBackup(desk: DeskStore): Promise<Outcome<Backup>> {
  const checks = await openCheckStore(inModelUnits);
  if (!checks.ok) return checks;
  const backup = await makeBackup(desk, checks.value);
  checks.value.close();
  return backup;
}

/** Has the browser save a backup. It counts as the last one once that is done, not before. */
export async function saveWhole(backup: Backup): Promise<Outcome<Backup>> {
  if (!(await saveFile(backup.file))) {
    return fail("backupNotSaved", [messages.backupIsNotSaved]);
  }
  await markBackedUp(backup);
  return succeed(backup);
}
