import type { Pool } from "../../compute/pool.ts";
import type { ReadItem } from "../../compute/poolMessages.ts";
import { type Fault, fail, type Outcome } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { Incoming } from "../../records/submission.ts";
import { readFileText } from "../../sharing/receivedFile.ts";
import type { BegunImport } from "../../storage/deskDatabase.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import type { Source } from "./sources.ts";

export interface Refused {
  readonly name: string;
  readonly sentence: Sentence;
}

/** What an import has done so far: taken = added + present + refusedCount once it has ended. */
export interface ImportProgress {
  readonly taken: number;
  readonly added: number;
  readonly present: number;
  readonly refusedCount: number;
  /** The first of those refused. */
  readonly refused: readonly Refused[];
  readonly state: "running" | "ended" | "stopped" | "failed";
  /** Why it failed. */
  readonly fault: Fault | null;
}

export const nothingYet: ImportProgress = {
  taken: 0,
  added: 0,
  present: 0,
  refusedCount: 0,
  refused: [],
  state: "running",
  fault: null,
};

/** Restores a backup file; gives what it did as counts. */
export type Restorer = (
  file: File,
  onCounts: (counts: { added: number; present: number }) => void,
  signal: AbortSignal,
) => Promise<Outcome<null>>;

const refusedShown = 200;
/** Records put into one transaction. */
const batchSize = 50;
const batchPauseMs = 400;

/**
 * Takes everything in that `sources` gives: each is read in the pool, and what is sound is kept in
 * batches, each one transaction. Nothing is held but what is under way, so that it does not matter how
 * many there are.
 */
export async function runImport(
  sources: AsyncIterable<Source>,
  surroundings: {
    readonly store: DeskStore;
    readonly pool: Pool;
    readonly restore: Restorer;
    readonly signal: AbortSignal;
    onProgress(progress: ImportProgress): void;
  },
): Promise<ImportProgress> {
  const { store, pool, restore, signal, onProgress } = surroundings;
  let progress = nothingYet;
  const change = (next: Partial<ImportProgress>): void => {
    progress = { ...progress, ...next };
    onProgress(progress);
  };
  const refuse = (name: string, { sentence }: Fault): void => {
    const { refused, refusedCount } = progress;
    change({
      refusedCount: refusedCount + 1,
      refused: refused.length < refusedShown ? [...refused, { name, sentence }] : refused,
    });
  };

  let batch: Incoming[] = [];
  let writing: Promise<void> = Promise.resolve();
  let failed: Fault | null = null;
  let keptAt = Date.now();
  const keep = (): Promise<void> => {
    const full = batch;
    batch = [];
    keptAt = Date.now();
    if (full.length > 0) {
      writing = writing.then(async () => {
        if (failed !== null) return;
        const added = await store.add(full);
        if (!added.ok) failed = added.fault;
        else {
          change({
            added: progress.added + added.value.added,
            present: progress.present + added.value.present,
          });
        }
      });
    }
    return writing;
  };
  const take = async (items: readonly ReadItem[], name: string): Promise<void> => {
    // A text with several links counts as several; one that holds none counts as itself.
    change({ taken: progress.taken + items.length });
    for (const item of items) {
      if (item.ok) batch.push(item.value);
      else refuse(name, item.fault);
    }
    if (batch.length >= batchSize || Date.now() - keptAt > batchPauseMs) await keep();
  };

  const begun = await store.beginImport(new Date().toISOString());
  if (!begun.ok) {
    change({ state: "failed", fault: begun.fault });
    return progress;
  }
  const letGo = holdLock(importLock(begun.value.key));
  const readOne = async (source: Source): Promise<void> => {
    const name = source.kind === "file" ? source.file.name : source.what;
    if (source.kind === "file" && (await isBackup(source.file))) {
      change({ taken: progress.taken + 1 });
      const before = progress;
      const restored = await restore(
        source.file,
        ({ added, present }) =>
          change({
            taken: before.taken - 1 + added + present,
            added: before.added + added,
            present: before.present + present,
          }),
        signal,
      );
      if (!restored.ok) {
        change({ taken: progress.taken + 1 });
        refuse(name, restored.fault);
      }
      return;
    }
    const text = source.kind === "file" ? await textOf(source.file) : null;
    if (text !== null && !text.ok) {
      change({ taken: progress.taken + 1 });
      refuse(name, text.fault);
      return;
    }
    const read = await pool.run({
      kind: "read",
      text: text === null ? (source.kind === "text" ? source.text : "") : text.value.text,
      what: text === null ? name : text.value.what,
      way: source.kind === "text" ? source.way : "file",
    });
    if (signal.aborted) return;
    if (read.kind === "read") await take(read.items, name);
    else if (read.kind === "failed") {
      change({ taken: progress.taken + 1 });
      refuse(name, read.fault);
    }
  };

  const underWay = new Set<Promise<void>>();
  for await (const source of sources) {
    if (signal.aborted || failed !== null) break;
    const work = readOne(source).finally(() => underWay.delete(work));
    underWay.add(work);
    if (underWay.size > pool.size + 1) await Promise.race(underWay);
  }
  await Promise.all(underWay);
  await keep();
  await store.endImport(begun.value.key);
  letGo();
  if (failed !== null) change({ state: "failed", fault: failed });
  else change({ state: signal.aborted ? "stopped" : "ended" });
  return progress;
}

const lockStart = "stopfit-desk-import ";

function importLock(key: string): string {
  return `${lockStart}${key}`;
}

/** Held until it is let go, or the page is gone: so another tab knows that this import still runs. */
function holdLock(name: string): () => void {
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  globalThis.navigator?.locks?.request(name, () => held).catch(() => undefined);
  return letGo;
}

/** Of the imports begun, those that no page is at any more. */
export async function interruptedImports(
  begun: readonly BegunImport[],
): Promise<readonly BegunImport[]> {
  const held = (await globalThis.navigator?.locks?.query())?.held ?? [];
  const running = new Set(held.map(({ name }) => name));
  return begun.filter(({ key }) => !running.has(importLock(key)));
}

/** Looks at the beginning only, whatever the size. */
async function isBackup(file: File): Promise<boolean> {
  try {
    return /^\s*\{"format":"stopfit-backup"/.test(await file.slice(0, 100).text());
  } catch {
    return false;
  }
}

async function textOf(file: File): ReturnType<typeof readFileText> {
  const what = `The file “${file.name}”`;
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
  if (/^\s*\{\s*"format":\s*"stopfit-reply"/.test(text.value.text)) {
    return fail("fileReply", [
      `${what} is a reply from a desk. Open it on the phone that sent the check.`,
    ]);
  }
  return text;
}
