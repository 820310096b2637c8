import type { Unpacked } from "../../compute/unpack.ts";
import { unpacked } from "../../compute/unpacker.ts";
import { type Fault, fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { notAhead } from "../../records/text/moment.ts";
import { cleanName } from "../../records/text/soundText.ts";
import { said } from "../../saying/texts.ts";
import { isBackup, readFileContent } from "../../sharing/receivedFile.ts";
import type { BegunImport, InboxEntry } from "../../storage/deskDatabase.ts";
import { sizeOf } from "../../storage/deskInbox.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { savedName } from "../saved/savedRoute.ts";
import { counted, refusedToo } from "./importCounts.ts";
import { deskLeft } from "./importLock.ts";
import { pageTurn } from "./pageTurn.ts";

/** Files read at the same time, and how large they may be together but for the last. */
const atOnce = 16;
const bytesAtOnce = 4_000_000;
/** As much as one transaction puts into the inbox. */
const batchEntries = 200;
const batchCharacters = 4_000_000;

/**
 * Puts everything that `sources` gives into the inbox, in its order, before any of it is taken in. Ends
 * with nothing kept where it is stopped or fails.
 */
export async function stageImport(
  sources: AsyncIterable<Unpacked>,
  {
    store,
    begun: first,
    signal,
    onBackup,
    onProgress,
  }: {
    readonly store: DeskStore;
    readonly begun: BegunImport;
    readonly signal: AbortSignal;
    onBackup(file: File): void;
    onProgress(begun: BegunImport): void;
  },
): Promise<Outcome<BegunImport | null>> {
  const { inbox } = store;
  let begun = first;
  let place = 0;
  let batch: InboxEntry[] = [];
  let characters = 0;
  const flush = async (): Promise<Outcome<null>> => {
    const full = batch;
    batch = [];
    characters = 0;
    return full.length === 0 ? succeed(null) : inbox.put(full);
  };
  const takeGroup = async (group: readonly Unpacked[]): Promise<Outcome<null>> => {
    const read = await Promise.all(group.map(contentOf));
    await pageTurn();
    for (const [index, source] of group.entries()) {
      const content = read[index];
      if (content === undefined) continue;
      const name = nameOf(source);
      const refuse = (fault: Fault): void => {
        begun = { ...begun, counts: refusedToo(counted(begun.counts, { taken: 1 }), name, fault) };
      };
      if (!content.ok) {
        refuse(content.fault);
        continue;
      }
      if (content.value.backup !== null) {
        onBackup(content.value.backup);
        refuse(restoredElsewhere(content.value.what));
        continue;
      }
      const entry: InboxEntry = {
        importKey: begun.key,
        place,
        name,
        what: content.value.what,
        way: source.kind === "text" ? source.way : "file",
        ...(source.kind === "file" && sentAt(source.file)),
        ...(source.kind === "text" && source.sentAt !== undefined && { sentAt: source.sentAt }),
        ...(source.kind !== "refused" && source.from !== undefined && { from: source.from }),
      };
      place += 1;
      batch.push({ ...entry, text: content.value.text });
      characters += sizeOf(content.value.text);
      if (batch.length >= batchEntries || characters >= batchCharacters) {
        const put = await flush();
        if (!put.ok) return put;
      }
    }
    begun = { ...begun, total: place };
    onProgress(begun);
    return succeed(null);
  };
  const end = async <Result>(result: Result): Promise<Result> => {
    if (signal.reason !== deskLeft) await inbox.end(begun.key);
    return result;
  };

  let group: Unpacked[] = [];
  let bytes = 0;
  for await (const source of unpacked(sources)) {
    if (signal.aborted) return end(succeed(null));
    group.push(source);
    bytes += source.kind === "file" ? source.file.size : 0;
    if (group.length < atOnce && bytes < bytesAtOnce) continue;
    const put = await takeGroup(group);
    if (!put.ok) return end(put);
    group = [];
    bytes = 0;
  }
  const last = await takeGroup(group);
  if (!last.ok) return end(last);
  const put = await flush();
  if (!put.ok) return end(put);
  if (signal.aborted) return end(succeed(null));
  begun = { ...begun, stage: "taking" };
  const noted = await inbox.note(begun);
  return noted.ok ? succeed(begun) : end(noted);
}

/** A backup is no import: it can hold decisions, and what it would change must be seen first. */
export function restoredElsewhere(what: string): Fault {
  return {
    code: "backupAtDesk",
    sentence: [messages.isBackupItIs({ what, savedName })],
  };
}

function sentAt(file: File): { sentAt: string } | null {
  const date = new Date(file.lastModified);
  return Number.isNaN(date.getTime()) ? null : { sentAt: notAhead(date.toISOString()) };
}

type Content =
  | { readonly what: string; readonly text: string | Blob; readonly backup: null }
  | { readonly what: string; readonly backup: File };

function nameOf(source: Unpacked): string {
  if (source.kind === "file") return source.file.name;
  return source.kind === "text" ? said(source.what) : source.name;
}

async function contentOf(source: Unpacked): Promise<Outcome<Content>> {
  if (source.kind === "refused") return { ok: false, fault: source.fault };
  if (source.kind === "text") {
    return succeed({ what: said(source.what), text: source.text, backup: null });
  }
  const { file } = source;
  const what = messages.file({ name: cleanName(file.name, 80) });
  if (await isBackup(file)) return succeed({ what, backup: file });
  if (file.size === 0) {
    return fail("fileEmpty", [messages.isEmptyOrCan({ what })]);
  }
  const content = await readFileContent(file);
  if (!content.ok) return content;
  return succeed({ what, text: content.value.text, backup: null });
}
