import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { recordBounds } from "../records/check/checkRecord.ts";
import { type ListedCheck, listedCheck } from "../records/check/listedCheck.ts";
import type { Decision } from "../records/review/decision.ts";
import type { Incoming, Way } from "../records/review/submission.ts";
import { type BackupLine, backupLineText, readBackupLine } from "./backupLine.ts";
import type { CheckStore } from "./checkStore.ts";
import type { DeskStore } from "./deskStore.ts";
import { joinedWithBackup } from "./joinBackup.ts";
import { MarkStore } from "./markStore.ts";

const pageSize = 100;

/** What a backup takes from the desk. */
type FromDesk = Pick<DeskStore, "wholeSubmissions" | "decisions">;

/** A backup, and the checks that are in it. */
export interface Backup {
  readonly file: File;
  readonly createdAt: string;
  readonly checks: readonly ListedCheck[];
}

/** Everything kept here, the desk's and the phone's, as one file. */
export async function makeBackup(desk: FromDesk, checks: CheckStore): Promise<Outcome<Backup>> {
  const createdAt = new Date().toISOString();
  const marks = new MarkStore();
  const phone = await marks.phone();
  marks.close();
  if (!phone.ok) return phone;
  const parts: BlobPart[] = [backupLineText({ kind: "header", createdAt, phone: phone.value })];
  let lines = 0;
  const add = (page: readonly BackupLine[]): void => {
    lines += page.length;
    // A Blob of each page lets the browser put it on disk.
    parts.push(new Blob(page.map(backupLineText)));
  };
  for await (const page of desk.wholeSubmissions(pageSize)) {
    if (!page.ok) return page;
    add(
      page.value.map(({ text, submission: { receivedAt, sentAt, place, way, photosLeftOut } }) => ({
        kind: "submission",
        text,
        receivedAt,
        ...(sentAt !== undefined && { sentAt }),
        ...(place !== undefined && { place }),
        way,
        photosLeftOut,
      })),
    );
  }
  const decisions = await desk.decisions();
  if (!decisions.ok) return decisions;
  add(decisions.value.map((decision) => ({ kind: "decision", decision })));
  const saved: ListedCheck[] = [];
  for (const which of ["present", "deleted"] as const) {
    const listed = await checks.list(which);
    if (!listed.ok) return listed;
    for (const { id } of listed.value) {
      // One at a time, for their pictures are long.
      const whole = await checks.get(id);
      if (!whole.ok) return whole;
      if (whole.value === null) continue;
      add([{ kind: "check", check: whole.value }]);
      saved.push(listedCheck(whole.value));
    }
  }
  parts.push(backupLineText({ kind: "end", lines }));
  const name = `stopfit-backup-${createdAt.slice(0, 16).replace(/[:T]/g, "-")}.txt`;
  const file = new File(parts, name, { type: "text/plain" });
  return succeed({ file, createdAt, checks: saved });
}

/** This backup has been saved or sent: what is in it is safe. */
export async function markBackedUp({ createdAt, checks }: Backup): Promise<void> {
  const marks = new MarkStore();
  await marks.markBackup(createdAt, checks);
  marks.close();
}

/** Lines of a file, without ever holding more of it than one; null for one that is too long. */
async function* linesOf(file: Blob): AsyncGenerator<string | null> {
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

/** What was new of a backup, and what was here already. */
export interface RestoreCounts {
  readonly added: number;
  readonly present: number;
  /** Of those added, checks that were here in another version, now joined. */
  readonly joined: number;
}

export interface RestoreSurroundings {
  readonly desk: Pick<DeskStore, "add" | "decide">;
  readonly checks: CheckStore;
  /** Reads the text of a submission; an outcome that says why it is none. */
  readSubmission(text: string, way: Way): Promise<Outcome<Incoming>>;
  onCounts(counts: RestoreCounts): void;
  readonly signal: AbortSignal;
}

/**
 * Joins a backup with what is here: adds what is missing, fills in what only the backup has, and never
 * puts the older in the place of the newer.
 */
export async function restoreBackup(
  file: Blob,
  { desk, checks, readSubmission, onCounts, signal }: RestoreSurroundings,
): Promise<Outcome<null>> {
  let counts: RestoreCounts = { added: 0, present: 0, joined: 0 };
  const count = (added: number, present: number, joined = 0): void => {
    counts = {
      added: counts.added + added,
      present: counts.present + present,
      joined: counts.joined + joined,
    };
    onCounts(counts);
  };
  const marks = new MarkStore();
  const phone = await marks.phone();
  marks.close();
  let madeHere = false;
  let submissions: Incoming[] = [];
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
    if (line.kind === "header") madeHere = phone.ok && line.phone === phone.value;
    if (line.kind === "check") {
      const taken = await checks.takeIn(line.check, (current, backup) =>
        joinedWithBackup(current, backup, madeHere),
      );
      if (!taken.ok) return taken;
      const isNew = taken.value !== "present";
      count(isNew ? 1 : 0, isNew ? 0 : 1, taken.value === "joined" ? 1 : 0);
    }
    if (line.kind === "submission") {
      const { kind: _, text, ...whence } = line;
      const read = await readSubmission(text, line.way);
      if (read.ok) submissions.push({ ...read.value, ...whence });
      else doubt(fail("backupRecord", read.fault.sentence));
    }
    return submissions.length + decisions.length >= pageSize ? keep() : succeed(null);
  };
  let number = 0;
  for await (const text of linesOf(file)) {
    number += 1;
    if (signal.aborted) break;
    if (text?.trim() === "") continue;
    const line =
      text === null ? fail<BackupLine>("lineTooLong", damagedWords) : readBackupLine(text, number);
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
}

const damagedWords = ["An entry of the backup can't be read."];
