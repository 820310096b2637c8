import { createPool, type Pool } from "../../compute/pool.ts";
import { type Outcome, succeed } from "../../physics/outcome.ts";
import { saveFile } from "../../sharing/saveFile.ts";
import {
  type Backup,
  makeBackup,
  markBackedUp,
  type RestoreCounts,
  restoreBackup,
} from "../../storage/backup.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { openDeskStore } from "../../storage/deskStore.ts";
import { submissionReader } from "./wholeBackup.ts";

export async function backupOf(checks: CheckStore): Promise<Outcome<Backup>> {
  const desk = await openDeskStore();
  if (!desk.ok) return desk;
  const backup = await makeBackup(desk.value, checks);
  desk.value.close();
  return backup;
}

/** Has the browser save one file with everything. */
export async function saveBackupHere(checks: CheckStore): Promise<Outcome<Backup>> {
  const backup = await backupOf(checks);
  if (!backup.ok) return backup;
  saveFile(backup.value.file);
  await markBackedUp(backup.value);
  return backup;
}

export interface Restored {
  readonly counts: RestoreCounts;
  readonly outcome: Outcome<null>;
}

/** Joins a backup's file with what is here; what could be restored is, whatever the outcome says. */
export async function restoreHere(checks: CheckStore, file: File): Promise<Restored> {
  let counts: RestoreCounts = { added: 0, present: 0, joined: 0 };
  const desk = await openDeskStore();
  if (!desk.ok) return { counts, outcome: desk };
  // Only what is at a desk is worked on by workers.
  let pool: Pool | null = null;
  const outcome = await restoreBackup(file, {
    desk: desk.value,
    checks,
    readSubmission: (text, way) => {
      pool ??= createPool();
      return submissionReader(pool)(text, way);
    },
    onCounts: (now) => {
      counts = now;
    },
    signal: new AbortController().signal,
  });
  (pool as Pool | null)?.dispose();
  desk.value.close();
  return { counts, outcome: outcome.ok ? succeed(null) : outcome };
}

let handed: File | null = null;

/** A backup that was opened from the list, for the screen that restores it. */
export function handBackup(file: File): void {
  handed = file;
}

export function takeHandedBackup(): File | null {
  const file = handed;
  handed = null;
  return file;
}
