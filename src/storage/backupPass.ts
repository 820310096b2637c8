import { type Fault, fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { BackupEntry } from "../records/backup/backupLine.ts";
import { recordBounds } from "../records/check/recordFormat.ts";
import * as messages from "../words/compiled/storage.ts";
import type { Message } from "../words/message.ts";

type BackupHeader = Extract<BackupEntry, { readonly kind: "header" }>;
/** What a backup holds between its header and its end. */
type BackupContent = Exclude<BackupEntry, { readonly kind: "header" | "end" }>;

/** Reads lines of a backup, beside the screen; `first` is the number of the first of them. */
export type ReadLines = (lines: Blob, first: number) => Promise<readonly Outcome<BackupEntry>[]>;

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

/** Lines that stand together and are read at once. */
interface Part {
  /** Number of its first line. */
  readonly first: number;
  /** Null for a line that is too long. */
  readonly lines: Blob | null;
}

/** No letter takes less than a byte. */
const lineBytes = recordBounds.textCharacters;
/** More lines than this that can't be read, and few that can: it is no backup that is a little damaged. */
const mostUnreadable = 1000;
const linesAtOnce = 64;
const bytesAtOnce = 250_000;
const lineEnd = 0x0a;

/** The file in parts, found by the ends of its lines alone: their text is made where they are read. */
async function* partsOf(file: Blob): AsyncGenerator<Part> {
  const reader = file.stream().getReader();
  let first = 1;
  let start = 0;
  let filled = 0;
  let line = 1;
  let lineStart = 0;
  const endLine = (end: number): readonly Part[] => {
    const parts: Part[] = [];
    if (end - lineStart > lineBytes) {
      if (lineStart > start) parts.push({ first, lines: file.slice(start, lineStart) });
      parts.push({ first: line, lines: null });
    } else {
      // The header goes first, alone: what no backup is, is not read any further.
      const isFull = line === 1 || filled >= linesAtOnce || end - start >= bytesAtOnce;
      if (!isFull) return parts;
      parts.push({ first, lines: file.slice(start, end) });
    }
    first = line + 1;
    start = end;
    filled = 0;
    return parts;
  };
  let read = 0;
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    for (let at = value.indexOf(lineEnd); at !== -1; at = nextEnd(value, at)) {
      const end = read + at + 1;
      if (end - lineStart > 1) filled += 1;
      for (const part of endLine(end)) yield part;
      line += 1;
      lineStart = end;
    }
    read += value.length;
  }
  if (read > lineStart) for (const part of endLine(read)) yield part;
  if (read > start) yield { first, lines: file.slice(start, read) };
}

/** Where the next line ends; -1: not in these bytes. A search for each of a million empty lines takes long. */
function nextEnd(bytes: Uint8Array, at: number): number {
  return bytes[at + 1] === lineEnd ? at + 1 : bytes.indexOf(lineEnd, at + 1);
}

const notABackup = fail<never>("notABackup", [messages.thisFileIsNot]);

const damaged = fail<never>("backupDamaged", [messages.entryOfBackupCant]);

const spoilt = fail<never>("backupSpoilt", [messages.moreThanEntriesOf({ mostUnreadable })]);

const unreadableCode = "fileUnreadable";
const unreadable = fail<never>(unreadableCode, [messages.backupCouldNotBe]);

type TakeEntry = (entry: BackupContent, header: BackupHeader) => Promise<Outcome<null>>;

/**
 * Reads a whole backup, an entry after the other, each handed to `take`; ends early where that fails, and
 * where the file is no backup, spoilt, or one of a newer version. Null where it was stopped.
 */
export async function passOverBackup(
  file: Blob,
  readLines: ReadLines,
  take: TakeEntry,
  signal: AbortSignal,
): Promise<Outcome<BackupPass | null>> {
  const parts = partsOf(file);
  const readNext = async (): Promise<readonly Outcome<BackupEntry>[] | "end" | "unreadable"> => {
    const next = await nextOf(parts);
    if (next === null) return "unreadable";
    if (next.done) return "end";
    const { first, lines } = next.value;
    return lines === null ? [damaged] : readLines(lines, first);
  };
  let header: BackupHeader | null = null;
  let entries = 0;
  let announced: number | null = null;
  let unread = 0;
  let why: Fault | null = null;
  let ahead = readNext();
  for (;;) {
    const read = await ahead;
    if (read === "unreadable") return unreadable;
    if (read === "end") break;
    // The next lines are read while these are taken.
    ahead = readNext();
    for (const entry of read) {
      if (signal.aborted) return succeed(null);
      if (!entry.ok) {
        if (entry.fault.code === "backupNewer") return entry;
        if (entry.fault.code === unreadableCode) return unreadable;
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
async function nextOf(parts: AsyncGenerator<Part>): Promise<IteratorResult<Part, unknown> | null> {
  try {
    return await parts.next();
  } catch {
    return null;
  }
}

function countWords(entries: number): Message {
  return entries === 1 ? messages.oneEntry : messages.entries({ entries });
}

/** What is wrong with a backup that was read; null where it is whole. */
export function faultOfPass({ entries, announced, unreadable, why }: BackupPass): Fault | null {
  const fault = (code: string, words: Message): Fault => ({ code, sentence: [words] });
  if (announced === null) {
    return fault("backupCut", messages.backupIsCutShort({ count: countWords(entries) }));
  }
  if (unreadable > 0) {
    const count = unreadable === 1 ? messages.oneEntry2 : messages.entries2({ unreadable });
    const { sentence } = why ?? { sentence: [] };
    return {
      code: "backupPartly",
      sentence: [messages.ofBackupCouldNot({ count, sentence })],
    };
  }
  if (announced !== entries) {
    return fault(
      "backupCut",
      messages.backupSaysThatIt({ count: countWords(announced), count2: countWords(entries) }),
    );
  }
  return null;
}
