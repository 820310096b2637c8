import type { Outcome } from "../../physics/outcome.ts";
import { type Backup, makeBackup } from "../../storage/backup.ts";
import { openCheckStore } from "../../storage/checkStore.ts";
import type { DeskStore } from "../../storage/deskStore.ts";

/** Everything kept here, the desk's and the phone's, as one file; not saved yet. */
export async function wholeBackup(desk: DeskStore): Promise<Outcome<Backup>> {
  const checks = await openCheckStore();
  if (!checks.ok) return checks;
  const backup = await makeBackup(desk, checks.value);
  checks.value.close();
  return backup;
}
