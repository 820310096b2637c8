import { type Fault, fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { BackupEntry } from "../records/backup/backupLine.ts";
import { recordBounds } from "../records/check/recordFormat.ts";

type BackupHeader = Extract<BackupEntry, { readonly kind: "header" }>;
/** What a backup holds between its header and its end. */
type BackupContent = Exclude<BackupEntry, { readonly kind: "header" | "end" }>;

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
/** More lines than this that can't be read, and few that can: it is no backup that is a little damaged. */
const mostUnreadable = 1000;
/** Read at the same time. */
const linesAtOnce = 32;
const charactersAtOnce = 2_000_000;

/** Lines that hold something, never more of the file in memory than a few of them. */
async function* linesOf(file: Blob): AsyncGenerator<Line> {
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  /** The line so far in the pieces it came in, which are joined once. */
  let begun: string[] = [];
  let length = 0;
  let number = 0;
  const add = (piece: string): void => {
    length += piece.length;
    if (length <= lineCharacters) begun.push(piece);
    else begun = [];
  };
  const lineOf = (): Line[] => {
    number += 1;
    const text = length > lineCharacters ? null : begun.join("");
    begun = [];
    length = 0;
    return text?.trim() === "" ? [] : [{ number, text }];
  };
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    const pieces = value.split("\n");
    const rest = pieces.pop() ?? "";
    for (const piece of pieces) {
      add(piece);
      yield* lineOf();
    }
    add(rest);
  }
  if (length > 0) yield* lineOf();
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

const spoilt = fail<never>("backupSpoilt", [
  `More than ${mostUnreadable} entries of the backup can't be read, and few can. It was not read any further.`,
]);

const unreadable = fail<never>("fileUnreadable", [
  "The backup could not be read to its end. Copy it to this device and choose it again.",
]);

type TakeEntry = (entry: BackupContent, header: BackupHeader) => Promise<Outcome<null>>;

/**
 * Reads a whole backup, an entry after the other, each handed to `take`; ends early where that fails, and
 * where the file is no backup, spoilt, or one of a newer version. Null where it was stopped.
 */
export async function passOverBackup(
  file: Blob,
  readEntry: ReadEntry,
  take: TakeEntry,
  signal: AbortSignal,
): Promise<Outcome<BackupPass | null>> {
  const batches = batchesOf(linesOf(file));
  let header: BackupHeader | null = null;
  let entries = 0;
  let announced: number | null = null;
  let unread = 0;
  let why: Fault | null = null;
  for (;;) {
    const next = await nextOf(batches);
    if (next === null) return unreadable;
    if (next.done) break;
    const read = await Promise.all(
      next.value.map(({ text, number }) => (text === null ? damaged : readEntry(text, number))),
    );
    for (const entry of read) {
      if (signal.aborted) return succeed(null);
      if (!entry.ok) {
        if (entry.fault.code === "backupNewer") return entry;
        if (header === null) return notABackup;
        unread += 1;
        why ??= entry.fault;
        if (unread > mostUnreadable && unread > entries) return spoilt;
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
  return header === null
    ? notABackup
    : succeed({ header, entries, announced, unreadable: unread, why });
}

/** Null where the file can no longer be read: it was changed or taken away since it was chosen. */
async function nextOf(
  batches: AsyncGenerator<readonly Line[]>,
): Promise<IteratorResult<readonly Line[], unknown> | null> {
  try {
    return await batches.next();
  } catch {
    return null;
  }
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
