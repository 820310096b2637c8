import type { Pool } from "../../compute/pool.ts";
import { createReadingPool } from "../../compute/readingPool.ts";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { type Backup, makeBackup } from "../../storage/backup.ts";
import type { ReadLines } from "../../storage/backupPass.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { type DeskStore, openDeskStore } from "../../storage/deskStore.ts";
import {
  type Restored,
  type RestoreReceipt,
  restoreBackup,
  undoRestore,
} from "../../storage/restoreBackup.ts";
import { type BackupSurvey, surveyBackup } from "../../storage/surveyBackup.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { saveWhole } from "./wholeBackup.ts";

export async function backupOf(checks: CheckStore): Promise<Outcome<Backup>> {
  return withDesk((desk) => makeBackup(desk, checks));
}

/** Has the browser save one file with everything. */
export async function saveBackupHere(checks: CheckStore): Promise<Outcome<Backup>> {
  const backup = await backupOf(checks);
  return backup.ok ? saveWhole(backup.value) : backup;
}

async function withDesk<Value>(
  work: (desk: DeskStore) => Promise<Outcome<Value>>,
): Promise<Outcome<Value>> {
  const desk = await openDeskStore();
  if (!desk.ok) return desk;
  const done = await work(desk.value);
  desk.value.close();
  return done;
}

function readerOf(pool: Pool): ReadLines {
  return async (lines, first) => {
    const done = await pool.run({ kind: "backupLines", lines, first });
    if (done.kind === "backupLines") return done.entries;
    return [{ ok: false, fault: done.kind === "failed" ? done.fault : unread }];
  };
}

const unread: Fault = { code: "backupDamaged", sentence: [messages.entriesCantBeRead] };

/** What a backup holds and would change. Null where `signal` stopped it. */
export function surveyHere(
  checks: CheckStore,
  file: File,
  signal: AbortSignal,
): Promise<Outcome<BackupSurvey | null>> {
  return withDesk(async (desk) => {
    const pool = createReadingPool();
    const survey = await surveyBackup(file, { desk, checks, readLines: readerOf(pool), signal });
    pool.dispose();
    return survey;
  });
}

/** Joins a backup's file with what is here; what could be restored is, whatever the fault says. */
export function restoreHere(
  checks: CheckStore,
  file: File,
  withDecisions: boolean,
): Promise<Outcome<Restored>> {
  return withDesk(async (desk) => {
    const pool = createReadingPool();
    const restored = await restoreBackup(file, {
      desk,
      checks,
      readLines: readerOf(pool),
      withDecisions,
      onCounts: () => undefined,
      signal: new AbortController().signal,
    });
    pool.dispose();
    return { ok: true, value: restored };
  });
}

export function undoHere(checks: CheckStore, receipt: RestoreReceipt): Promise<Outcome<null>> {
  return withDesk((desk) => undoRestore(receipt, { desk, checks }));
}

/** A backup that came in elsewhere in the app, and by which way. */
export interface HandedBackup {
  readonly file: File;
  /** Ends "It was …". */
  readonly way: string;
}

let handed: HandedBackup | null = null;

/** For the screen that says what is in it; nothing of it is restored before someone has said so there. */
export function handBackup(file: File, way: string): void {
  handed = { file, way };
}

export function takeHandedBackup(): HandedBackup | null {
  const backup = handed;
  handed = null;
  return backup;
}
