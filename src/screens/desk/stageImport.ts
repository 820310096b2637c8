import { type Fault, fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { isBackup, readFileText } from "../../sharing/receivedFile.ts";
import type { BegunImport, InboxEntry } from "../../storage/deskDatabase.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import { counted, refusedToo } from "./importCounts.ts";
import { deskLeft } from "./importLock.ts";
import type { Source } from "./sources.ts";

/** Files read at the same time. */
const atOnce = 16;
/** As much as one transaction puts into the inbox. */
const batchEntries = 200;
const batchCharacters = 4_000_000;

export interface Staged {
  readonly begun: BegunImport;
  /** Backups as they were chosen, by their place. */
  readonly backups: ReadonlyMap<number, Blob>;
}

/**
 * Puts everything that `sources` gives into the inbox, in its order, before any of it is taken in. Ends
 * with nothing kept where it is stopped or fails.
 */
export async function stageImport(
  sources: AsyncIterable<Source>,
  {
    store,
    begun: first,
    signal,
    onProgress,
  }: {
    readonly store: DeskStore;
    readonly begun: BegunImport;
    readonly signal: AbortSignal;
    onProgress(begun: BegunImport): void;
  },
): Promise<Outcome<Staged | null>> {
  const { inbox } = store;
  let begun = first;
  let place = 0;
  let batch: InboxEntry[] = [];
  let characters = 0;
  const backups = new Map<number, Blob>();
  const flush = async (): Promise<Outcome<null>> => {
    const full = batch;
    batch = [];
    characters = 0;
    return full.length === 0 ? succeed(null) : inbox.put(full);
  };
  const putBackup = async (entry: InboxEntry, file: File): Promise<Outcome<null>> => {
    backups.set(entry.place, file);
    const backup = await copyOf(file);
    const copied = backup && (await inbox.put([{ ...entry, backup }]));
    // Without room for a copy it must be chosen again if its page is closed.
    return copied?.ok ? copied : inbox.put([entry]);
  };
  const takeGroup = async (group: readonly Source[]): Promise<Outcome<null>> => {
    const read = await Promise.all(group.map(contentOf));
    for (const [index, source] of group.entries()) {
      const content = read[index];
      if (content === undefined) continue;
      const name = source.kind === "file" ? source.file.name : source.what;
      const refuse = (fault: Fault): void => {
        begun = { ...begun, counts: refusedToo(counted(begun.counts, { taken: 1 }), name, fault) };
      };
      if (!content.ok) {
        refuse(content.fault);
        continue;
      }
      const entry: InboxEntry = {
        importKey: begun.key,
        place,
        name,
        what: content.value.what,
        way: source.kind === "text" ? source.way : "file",
        ...(source.kind === "file" && sentAt(source.file)),
      };
      place += 1;
      if (content.value.backup !== null) {
        const put = await putBackup(entry, content.value.backup);
        if (!put.ok) return put;
        continue;
      }
      batch.push({ ...entry, text: content.value.text });
      characters += content.value.text.length;
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

  let group: Source[] = [];
  for await (const source of sources) {
    if (signal.aborted) return end(succeed(null));
    group.push(source);
    if (group.length < atOnce) continue;
    const put = await takeGroup(group);
    if (!put.ok) return end(put);
    group = [];
  }
  const last = await takeGroup(group);
  if (!last.ok) return end(last);
  const put = await flush();
  if (!put.ok) return end(put);
  if (signal.aborted) return end(succeed(null));
  begun = { ...begun, stage: "taking" };
  const noted = await inbox.note(begun);
  return noted.ok ? succeed({ begun, backups }) : end(noted);
}

/**
 * The content of a file, no longer bound to where the file lies; the browser, not the page, holds the
 * pieces. Null where it cannot be read.
 */
async function copyOf(file: File): Promise<Blob | null> {
  try {
    const pieces: Blob[] = [];
    const reader = file.stream().getReader();
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return new Blob(pieces);
      pieces.push(new Blob([value]));
    }
  } catch {
    return null;
  }
}

function sentAt(file: File): { sentAt: string } | null {
  const date = new Date(file.lastModified);
  return Number.isNaN(date.getTime()) ? null : { sentAt: date.toISOString() };
}

type Content =
  | { readonly what: string; readonly text: string; readonly backup: null }
  | { readonly what: string; readonly backup: File };

async function contentOf(source: Source): Promise<Outcome<Content>> {
  if (source.kind === "text") {
    return succeed({ what: source.what, text: source.text, backup: null });
  }
  const { file } = source;
  const what = `The file “${file.name}”`;
  if (await isBackup(file)) return succeed({ what, backup: file });
  if (file.size === 0) {
    return fail("fileEmpty", [`${what} is empty or can no longer be read. Choose it again.`]);
  }
  const text = await readFileText(file);
  if (!text.ok) return text;
  if (text.value.text.startsWith("PK\u0003\u0004")) {
    return fail("fileZipped", [
      `${what} is a zip archive. Unpack it first, then drop the folder that comes out.`,
    ]);
  }
  return succeed({ what, text: text.value.text, backup: null });
}
