import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Pool } from "../../compute/pool.ts";
import type { Unpacked } from "../../compute/unpack.ts";
import type { BegunImport } from "../../storage/deskDatabase.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import { markDeskUsed } from "./deskUsed.ts";
import { deskLeft, holdImport } from "./importLock.ts";
import type { ImportProgress } from "./importRun.ts";

export interface Imports {
  readonly importing: ImportProgress | null;
  /** When an import was begun of which nothing is here: its page was closed while files were read. */
  readonly dropped: string | null;
  /** A backup that was among what was chosen; nothing of it is taken in. */
  readonly backup: File | null;
  forgetBackup(): void;
  take(sources: AsyncIterable<Unpacked>): void;
  stopImport(): void;
  /** Closes what is said about an import. */
  closeImport(): void;
  forgetDropped(): void;
}

type Work = AsyncIterable<Unpacked> | BegunImport;

const redrawMs = 250;

/** Imports, one after another; those whose page was closed are gone on with. */
export function useImports({
  store,
  ready,
  startPool,
  onEnded,
}: {
  store: DeskStore | null;
  /** The list stands: what was left over may be gone on with. */
  ready: boolean;
  startPool: () => Pool;
  onEnded: (store: DeskStore) => Promise<void>;
}): Imports {
  const [importing, setImporting] = useState<ImportProgress | null>(null);
  const [dropped, setDropped] = useState<string | null>(null);
  const [backup, setBackup] = useState<File | null>(null);
  const run = useRef<AbortController | null>(null);
  const pool = useRef<Pool | null>(null);
  const waiting = useRef<Work[]>([]);

  const takeOne = useCallback(
    async (store: DeskStore, work: Work) => {
      const own = new AbortController();
      run.current = own;
      const { resumeImport, runImport } = await import("./importRun.ts");
      const hands = startPool();
      pool.current = hands;
      const told = { at: 0, state: "", latest: null as ImportProgress | null, timer: 0 };
      const tell = () => {
        window.clearTimeout(told.timer);
        told.timer = 0;
        if (told.latest === null) return;
        told.at = Date.now();
        told.state = told.latest.state;
        setImporting(told.latest);
      };
      const surroundings = {
        store,
        pool: hands,
        onBackup: setBackup,
        signal: own.signal,
        onProgress: (progress: ImportProgress) => {
          told.latest = progress;
          if (progress.state !== told.state || Date.now() - told.at >= redrawMs) tell();
          else if (told.timer === 0) told.timer = window.setTimeout(tell, redrawMs);
        },
      };
      const end =
        "key" in work
          ? await resumeImport(work, surroundings)
          : await runImport(work, surroundings);
      hands.dispose();
      window.clearTimeout(told.timer);
      if (end === null) return;
      markDeskUsed();
      await onEnded(store);
      setImporting(end);
    },
    [startPool, onEnded],
  );

  /** What comes while an import runs waits its turn. */
  const go = useCallback(async () => {
    if (!store || run.current) return;
    for (let next = waiting.current.shift(); next; next = waiting.current.shift()) {
      await takeOne(store, next);
    }
    run.current = null;
  }, [store, takeOne]);

  const take = useCallback(
    (sources: AsyncIterable<Unpacked>) => {
      waiting.current.push(sources);
      go();
    },
    [go],
  );
  useEffect(() => {
    go();
  }, [go]);

  useEffect(() => {
    if (!store || !ready) return;
    let left = false;
    const look = async () => {
      const begun = await store.inbox.begun();
      if (!begun.ok || begun.value.length === 0) return;
      for (const each of begun.value) {
        if (each.stage === "taking") {
          if (!left) waiting.current.push(each);
          continue;
        }
        const letGo = await holdImport(each);
        if (letGo === null) continue;
        await store.inbox.end(each.key);
        letGo();
        if (!left) setDropped(each.startedAt);
      }
      if (!left) go();
    };
    look();
    return () => {
      left = true;
    };
  }, [store, ready]);

  useEffect(
    () => () => {
      run.current?.abort(deskLeft);
      pool.current?.dispose();
    },
    [],
  );

  return {
    importing,
    dropped,
    backup,
    take,
    stopImport: () => {
      run.current?.abort();
      pool.current?.cancel();
    },
    closeImport: () => setImporting(null),
    forgetDropped: () => setDropped(null),
    forgetBackup: () => setBackup(null),
  };
}
