import { type Fault, fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { BackupEntry } from "../records/backup/backupLine.ts";
import { recordBounds } from "../records/check/recordFormat.ts";

export type BackupHeader = Extract<BackupEntry, { readonly kind: "header" }>;
/** What a backup holds between its header and its end. */
export type BackupContent = Exclude<BackupEntry, { readonly kind: "header" | "end" }>;

/** Reads one line of a backup, beside the screen. */
export type ReadEntry = (text: string, number: number) => Promise<Outcome<BackupEntry>>;

/** What is known of a backup once all of it was read. */
export interface BackupPass {
  readonly header: BackupHeader;
  readonly entries: number;
  /** How many its end says that there are; null: it has no end. */
  readonly announced: number | null;
  readonly unreadable: number;
  /** Why the first of those could not be read. */
  readonly why: Fault | null;
}

interface Line {
  readonly number: number;
  /** Null for one that is too long. */
  readonly text: string | null;
}

const lineCharacters = recordBounds.textCharacters;
/** Read at the same time. */
const linesAtOnce = 32;
const charactersAtOnce = 2_000_000;

/** Lines that hold something, never more of the file in memory than a few of them. */
async function* linesOf(file: Blob): AsyncGenerator<Line> {
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  let tooLong = false;
  let number = 0;
  const lineOf = (piece: string): Line[] => {
    number += 1;
    const text = tooLong || piece.length > lineCharacters ? null : piece;
    tooLong = false;
    return text?.trim() === "" ? [] : [{ number, text }];
  };
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    const pieces = (rest + value).split("\n");
    rest = pieces.pop() ?? "";
    for (const piece of pieces) yield* lineOf(piece);
    if (rest.length > lineCharacters) {
      rest = "";
      tooLong = true;
    }
  }
  if (tooLong || rest !== "") yield* lineOf(rest);
}

async function* batchesOf(lines: AsyncIterable<Line>): AsyncGenerator<readonly Line[]> {
  let batch: Line[] = [];
  let characters = 0;
  for await (const line of lines) {
    batch.push(line);
    characters += line.text?.length ?? 0;
    // The header goes first, alone: what no backup is, is not read any further.
    if (line.number > 1 && batch.length < linesAtOnce && characters < charactersAtOnce) continue;
    yield batch;
    batch = [];
    characters = 0;
  }
  if (batch.length > 0) yield batch;
}

const notABackup = fail<never>("notABackup", [
  "This file is not a backup of Stopfit: it does not begin as one.",
]);

const damaged = fail<never>("backupDamaged", ["An entry of the backup can't be read."]);

/**
 * Reads a whole backup, an entry after the other, each handed to `take`; ends early where that fails, and
 * where the file is no backup or one of a newer version. Null where it was stopped.
 */
export async function passOverBackup(
  file: Blob,
  readEntry: ReadEntry,
  take: (entry: BackupContent, header: BackupHeader) => Promise<Outcome<null>>,
  signal: AbortSignal,
): Promise<Outcome<BackupPass | null>> {
  let header: BackupHeader | null = null;
  let entries = 0;
  let announced: number | null = null;
  let unreadable = 0;
  let why: Fault | null = null;
  for await (const batch of batchesOf(linesOf(file))) {
    const read = await Promise.all(
      batch.map(({ text, number }) => (text === null ? damaged : readEntry(text, number))),
    );
    for (const entry of read) {
      if (signal.aborted) return succeed(null);
      if (!entry.ok) {
        if (entry.fault.code === "backupNewer") return entry;
        if (header === null) return notABackup;
        unreadable += 1;
        why ??= entry.fault;
      } else if (entry.value.kind === "header") header ??= entry.value;
      else if (header === null) return notABackup;
      else if (entry.value.kind === "end") announced = entry.value.lines;
      else {
        entries += 1;
        const taken = await take(entry.value, header);
        if (!taken.ok) return taken;
      }
    }
  }
  return header === null ? notABackup : succeed({ header, entries, announced, unreadable, why });
}

/** What is wrong with a backup that was read; null where it is whole. */
export function faultOfPass({ entries, announced, unreadable, why }: BackupPass): Fault | null {
  const fault = (code: string, words: string): Fault => ({ code, sentence: [words] });
  if (announced === null) {
    return fault(
      "backupCut",
      `The backup is cut short: it ends after ${entries} entries. Look for a whole one.`,
    );
  }
  if (unreadable > 0) {
    const count = unreadable === 1 ? "One entry" : `${unreadable} entries`;
    const { sentence } = why ?? { sentence: [] };
    return {
      code: "backupPartly",
      sentence: [`${count} of the backup could not be read. `, ...sentence],
    };
  }
  if (announced !== entries) {
    return fault(
      "backupCut",
      `The backup says that it has ${announced} entries, and ${entries} are there. Look for one that was not changed.`,
    );
  }
  return null;
}
