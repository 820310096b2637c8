import type { Pool } from "../../compute/pool.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { type BackupLine, backupLineText, readBackupLine } from "../../records/backupLine.ts";
import { recordBounds } from "../../records/checkRecord.ts";
import type { Decision } from "../../records/decision.ts";
import type { StoredCheck } from "../../records/storedCheck.ts";
import type { Incoming } from "../../records/submission.ts";
import { type CheckStore, openCheckStore } from "../../storage/checkStore.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import type { Restorer } from "./importRun.ts";

const pageSize = 100;

/** Everything kept here, the desk's and the phone's, as one file. */
export async function backupFile(desk: DeskStore): Promise<Outcome<File>> {
  const createdAt = new Date().toISOString();
  const parts: BlobPart[] = [backupLineText({ kind: "header", createdAt })];
  let lines = 0;
  const add = (page: readonly BackupLine[]): void => {
    lines += page.length;
    // A Blob of each page lets the browser put it on disk.
    parts.push(new Blob(page.map(backupLineText)));
  };
  for await (const page of desk.wholeSubmissions(pageSize)) {
    if (!page.ok) return page;
    add(
      page.value.map(({ text, submission: { receivedAt, way, photosLeftOut } }) => ({
        kind: "submission",
        text,
        receivedAt,
        way,
        photosLeftOut,
      })),
    );
  }
  const decisions = await desk.decisions();
  if (!decisions.ok) return decisions;
  add(decisions.value.map((decision) => ({ kind: "decision", decision })));
  const store = await openCheckStore();
  if (!store.ok) return store;
  for (const which of ["present", "deleted"] as const) {
    const checks = await store.value.list(which);
    if (!checks.ok) return checks;
    add(checks.value.map((check) => ({ kind: "check", check })));
  }
  store.value.close();
  parts.push(backupLineText({ kind: "end", lines }));
  const name = `stopfit-backup-${createdAt.slice(0, 16).replace(/[:T]/g, "-")}.txt`;
  return succeed(new File(parts, name, { type: "text/plain" }));
}

/** Lines of a file, without ever holding more of it than one; null for one that is too long. */
async function* linesOf(file: File): AsyncGenerator<string | null> {
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  let tooLong = false;
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    const pieces = (rest + value).split("\n");
    rest = pieces.pop() ?? "";
    for (const piece of pieces) {
      yield tooLong ? null : piece;
      tooLong = false;
    }
    if (rest.length > 2 * recordBounds.textCharacters) {
      rest = "";
      tooLong = true;
    }
  }
  if (tooLong) yield null;
  else if (rest !== "") yield rest;
}

function lastChange({ updatedAt, deletedAt }: StoredCheck): string {
  return deletedAt !== undefined && deletedAt > updatedAt ? deletedAt : updatedAt;
}

/** Puts a check of the phone back, unless the one here was changed later. */
async function restoreCheck(store: CheckStore, check: StoredCheck): Promise<Outcome<boolean>> {
  const added = await store.add(check);
  if (!added.ok || added.value) return added;
  const present = await store.get(check.id);
  if (!present.ok) return present;
  if (present.value !== null && lastChange(present.value) >= lastChange(check)) {
    return succeed(false);
  }
  const updated = await store.update(check.id, () => check);
  return updated.ok ? succeed(true) : updated;
}

/** Joins a backup with what is here: adds what is missing, and never puts the older in the place of the newer. */
export function restorer(desk: DeskStore, pool: Pool): Restorer {
  return async (file, onCounts, signal) => {
    let counts = { added: 0, present: 0 };
    const count = (added: number, present: number): void => {
      counts = { added: counts.added + added, present: counts.present + present };
      onCounts(counts);
    };
    let submissions: (Incoming & { receivedAt: string })[] = [];
    let decisions: Decision[] = [];
    const keep = async (): Promise<Outcome<null>> => {
      const added = await desk.add(submissions);
      if (!added.ok) return added;
      const decided = await desk.decide(decisions);
      if (!decided.ok) return decided;
      count(
        added.value.added + decided.value,
        added.value.present + decisions.length - decided.value,
      );
      submissions = [];
      decisions = [];
      return succeed(null);
    };
    const store = await openCheckStore();
    if (!store.ok) return store;
    let lines = 0;
    let announced: number | null = null;
    let unreadable = 0;
    let first: Outcome<null> = succeed(null);
    const doubt = (problem: Outcome<never>): void => {
      unreadable += 1;
      if (first.ok) first = problem;
    };
    const takeLine = async (line: BackupLine): Promise<Outcome<null>> => {
      if (line.kind === "end") announced = line.lines;
      if (line.kind === "decision") decisions.push(line.decision);
      if (line.kind === "check") {
        const restored = await restoreCheck(store.value, line.check);
        if (!restored.ok) return restored;
        count(restored.value ? 1 : 0, restored.value ? 0 : 1);
      }
      if (line.kind === "submission") {
        const { text, receivedAt, way, photosLeftOut } = line;
        const read = await pool.run({ kind: "read", text, what: "The backup's check", way });
        const [item] = read.kind === "read" ? read.items : [];
        if (item?.ok === true) submissions.push({ ...item.value, receivedAt, photosLeftOut });
        else doubt(fail("backupRecord", item?.ok === false ? item.fault.sentence : damagedWords));
      }
      return submissions.length + decisions.length >= pageSize ? keep() : succeed(null);
    };
    let number = 0;
    for await (const text of linesOf(file)) {
      number += 1;
      if (signal.aborted) break;
      if (text?.trim() === "") continue;
      const line =
        text === null
          ? fail<BackupLine>("lineTooLong", damagedWords)
          : readBackupLine(text, number);
      if (!line.ok) {
        if (line.fault.code === "backupNewer") return line;
        doubt(line);
        continue;
      }
      if (line.value.kind !== "header" && line.value.kind !== "end") lines += 1;
      const taken = await takeLine(line.value);
      if (!taken.ok) return taken;
    }
    const kept = await keep();
    store.value.close();
    if (!kept.ok) return kept;
    if (signal.aborted) return succeed(null);
    if (announced === null || (announced !== lines && unreadable === 0)) {
      return fail("backupCut", [
        `The backup is cut short: it ends after ${lines} entries. What is in it was restored; look for a whole one.`,
      ]);
    }
    if (unreadable === 0) return succeed(null);
    const words = first.ok ? damagedWords : first.fault.sentence;
    return fail("backupPartly", [
      `${unreadable === 1 ? "One entry" : `${unreadable} entries`} of the backup could not be read; all else was restored. `,
      ...words,
    ]);
  };
}

const damagedWords = ["An entry of the backup can't be read."];
