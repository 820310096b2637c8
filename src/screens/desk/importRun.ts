import type { Pool } from "../../compute/pool.ts";
import type { PoolResult } from "../../compute/poolMessages.ts";
import type { Unpacked } from "../../compute/unpack.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { Incoming } from "../../records/review/submission.ts";
import type { BegunImport, ImportCounts, InboxEntry } from "../../storage/deskDatabase.ts";
import { nothingCounted, takeOut } from "../../storage/deskInbox.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import { counted, refusedToo } from "./importCounts.ts";
import { deskLeft, holdImport } from "./importLock.ts";
import { pageTurn } from "./pageTurn.ts";
import { restoredElsewhere, stageImport } from "./stageImport.ts";

/** taken = added + present + refusedCount once it has ended. */
export interface ImportProgress extends ImportCounts {
  /** How much was chosen: entries, not checks, as one text may hold several. */
  readonly total: number;
  /** Entries that are through. */
  readonly through: number;
  readonly state: "reading" | "running" | "ended" | "stopped" | "failed";
  /** Why it failed. */
  readonly fault: Fault | null;
  /** When it was begun, where it goes on after its page was closed. */
  readonly resumed: string | null;
}

export const nothingYet: ImportProgress = {
  ...nothingCounted,
  total: 0,
  through: 0,
  state: "reading",
  fault: null,
  resumed: null,
};

export interface ImportSurroundings {
  readonly store: DeskStore;
  readonly pool: Pool;
  /** A backup among what was chosen: nothing of it is taken in here. */
  onBackup(file: File): void;
  readonly signal: AbortSignal;
  onProgress(progress: ImportProgress): void;
}

/** Entries taken in at once, and kept in one transaction. */
const pageSize = 50;

/**
 * Takes everything in that `sources` gives. First all of it is put into the inbox; then each is read in the
 * pool, and what is sound is kept in batches, each one transaction in which it also leaves the inbox. A page
 * that is closed during the first leaves nothing; during the second, the import goes on at the next opening.
 */
export async function runImport(
  sources: AsyncIterable<Unpacked>,
  surroundings: ImportSurroundings,
): Promise<ImportProgress> {
  const { store, signal, onProgress } = surroundings;
  const began = await store.inbox.begin();
  if (!began.ok) return { ...nothingYet, state: "failed", fault: began.fault };
  const letGo = await holdImport(began.value);
  try {
    const staged = await stageImport(sources, {
      store,
      begun: began.value,
      signal,
      onBackup: surroundings.onBackup,
      onProgress: ({ total, counts }) => onProgress({ ...nothingYet, ...counts, total }),
    });
    if (!staged.ok) return { ...nothingYet, state: "failed", fault: staged.fault };
    if (staged.value === null) return { ...nothingYet, state: "stopped" };
    return await takeStaged(staged.value, null, surroundings);
  } finally {
    letGo?.();
  }
}

/** Goes on with an import whose page was closed; null where another tab is at it. */
export async function resumeImport(
  begun: BegunImport,
  surroundings: ImportSurroundings,
): Promise<ImportProgress | null> {
  const letGo = await holdImport(begun);
  if (letGo === null) return null;
  try {
    return await takeStaged(begun, begun.startedAt, surroundings);
  } finally {
    letGo();
  }
}

async function takeStaged(
  first: BegunImport,
  resumed: string | null,
  { store, pool, signal, onProgress }: ImportSurroundings,
): Promise<ImportProgress> {
  let begun = first;
  let through = 0;
  const progress = (
    state: ImportProgress["state"],
    { counts = begun.counts, fault = null as Fault | null } = {},
  ): ImportProgress => ({ ...counts, total: begun.total, through, state, fault, resumed });

  const keep = async (
    entries: readonly InboxEntry[],
    results: readonly PoolResult[],
  ): Promise<Fault | null> => {
    const incoming: Incoming[] = [];
    let { counts } = begun;
    for (const [index, entry] of entries.entries()) {
      const result = results[index];
      if (result?.kind === "read") {
        // A text with several links counts as several; one that holds none counts as itself.
        counts = counted(counts, { taken: result.items.length });
        for (const item of result.items) {
          if (!item.ok) counts = refusedToo(counts, entry.name, item.fault);
          else incoming.push({ ...item.value, ...whence(begun, entry) });
        }
      } else if (result?.kind === "failed") {
        counts = refusedToo(counted(counts, { taken: 1 }), entry.name, result.fault);
      }
    }
    let next = begun;
    const added = await store.add(incoming, async (transaction, more) => {
      next = { ...begun, counts: counted(counts, more) };
      await takeOut(
        transaction,
        next,
        entries.map(({ place }) => place),
      );
    });
    if (!added.ok) return added.fault;
    begun = next;
    through += entries.length;
    onProgress(progress("running"));
    return null;
  };

  const takePage = async (page: readonly InboxEntry[]): Promise<Fault | null> => {
    const texts = page.filter(({ text }) => text !== undefined);
    await pageTurn();
    const results = await Promise.all(
      texts.map(({ text = "", what, way }) => pool.run({ kind: "read", text, what, way })),
    );
    await pageTurn();
    if (signal.aborted) return null;
    const kept = texts.length === 0 ? null : await keep(texts, results);
    const others = page.filter(({ text }) => text === undefined);
    if (kept !== null || others.length === 0) return kept;
    return keep(
      others,
      others.map((entry) => ({ kind: "failed", fault: restoredElsewhere(entry.what) })),
    );
  };

  onProgress(progress("running"));
  let fault: Fault | null = null;
  while (!signal.aborted && fault === null) {
    const page = await store.inbox.next(begun.key, pageSize);
    if (!page.ok) fault = page.fault;
    else if (page.value.length === 0) break;
    else fault = await takePage(page.value);
  }
  // What could not be kept stays in the inbox for the next opening; what was stopped is dropped.
  if (fault === null && signal.reason !== deskLeft) await store.inbox.end(begun.key);
  const state = fault !== null ? "failed" : signal.aborted ? "stopped" : "ended";
  return progress(state, { fault });
}

function whence({ startedAt }: BegunImport, { place, sentAt, from }: InboxEntry) {
  return {
    receivedAt: startedAt,
    place,
    ...(sentAt !== undefined && { sentAt }),
    ...(from !== undefined && { from }),
  };
}
