import type { Pool } from "../../compute/pool.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { Incoming, Way } from "../../records/review/submission.ts";
import { makeBackup, markBackedUp, restoreBackup } from "../../storage/backup.ts";
import { openCheckStore } from "../../storage/checkStore.ts";
import type { DeskStore } from "../../storage/deskStore.ts";

/** Restores a backup; gives what it did as counts. */
export type Restorer = (
  file: Blob,
  onCounts: (counts: { added: number; present: number }) => void,
  signal: AbortSignal,
) => Promise<Outcome<null>>;

/** Everything kept here, the desk's and the phone's, as one file; it counts as the last backup. */
export async function backupFile(desk: DeskStore): Promise<Outcome<File>> {
  const checks = await openCheckStore();
  if (!checks.ok) return checks;
  const backup = await makeBackup(desk, checks.value);
  checks.value.close();
  if (!backup.ok) return backup;
  await markBackedUp(backup.value);
  return succeed(backup.value.file);
}

/** Reads the texts of submissions in the workers of `pool`. */
export function submissionReader(pool: Pool) {
  return async (text: string, way: Way): Promise<Outcome<Incoming>> => {
    const read = await pool.run({ kind: "read", text, what: "The backup's check", way });
    const [item] = read.kind === "read" ? read.items : [];
    return item ?? fail("backupRecord", ["An entry of the backup can't be read."]);
  };
}

/** Joins a backup with what is here. */
export function restorer(desk: DeskStore, pool: Pool): Restorer {
  return async (file, onCounts, signal) => {
    const checks = await openCheckStore();
    if (!checks.ok) return checks;
    const restored = await restoreBackup(file, {
      desk,
      checks: checks.value,
      readSubmission: submissionReader(pool),
      onCounts,
      signal,
    });
    checks.value.close();
    return restored;
  };
}
