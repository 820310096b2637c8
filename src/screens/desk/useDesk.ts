import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { createPool, type Pool } from "../../compute/pool.ts";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { type Decision, type DeskCheck, deskChecks } from "../../records/decision.ts";
import type { Submission } from "../../records/submission.ts";
import type { BegunImport } from "../../storage/deskDatabase.ts";
import { type DeskStore, openDeskStore, type Result } from "../../storage/deskStore.ts";
import { restorer } from "./backup.ts";
import { runComputing } from "./computeRun.ts";
import { type ImportProgress, interruptedImports, runImport } from "./importRun.ts";
import type { Source } from "./sources.ts";

export interface Desk {
  readonly store: DeskStore | null;
  /** Why nothing can be kept, or what could not be. */
  readonly fault: Fault | null;
  /** Null until they are read. */
  readonly checks: readonly DeskCheck[] | null;
  readonly decisions: readonly Decision[];
  readonly importing: ImportProgress | null;
  /** Imports that were begun and never ended: their page was closed. */
  readonly interrupted: readonly BegunImport[];
  readonly computing: boolean;
  take(sources: AsyncIterable<Source>): void;
  stopImport(): void;
  /** Closes what is said about an import. */
  closeImport(): void;
  forgetInterrupted(): void;
  compute(): void;
  stopComputing(): void;
  decide(decision: Decision): Promise<Outcome<number>>;
}

export interface DeskSurroundings {
  readonly openStore?: () => Promise<Outcome<DeskStore>>;
  readonly startPool?: () => Pool;
}

const redrawMs = 500;
/** The list is there to be used before the calculation begins. */
const computeAfterMs = 1500;

/** Everything the desk's screens stand on; it goes on while one goes from the list to a check. */
export function useDesk({
  openStore = openDeskStore,
  startPool = createPool,
}: DeskSurroundings = {}): Desk {
  const [store, setStore] = useState<DeskStore | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [checks, setChecks] = useState<readonly DeskCheck[] | null>(null);
  const [decisions, setDecisions] = useState<readonly Decision[]>([]);
  const [importing, setImporting] = useState<ImportProgress | null>(null);
  const [interrupted, setInterrupted] = useState<readonly BegunImport[]>([]);
  const [computing, setComputing] = useState(false);
  const held = useRef<{ submissions: Map<string, Submission>; decisions: readonly Decision[] }>({
    submissions: new Map(),
    decisions: [],
  });
  const redraw = useRef<ReturnType<typeof setTimeout> | null>(null);
  const importRun = useRef<AbortController | null>(null);
  const computeRun = useRef<AbortController | null>(null);
  const pool = useRef<Pool | null>(null);
  const computePool = useRef<Pool | null>(null);

  const show = useCallback(() => {
    redraw.current = null;
    setChecks(deskChecks([...held.current.submissions.values()], held.current.decisions));
    setDecisions(held.current.decisions);
  }, []);
  const showSoon = useCallback(() => {
    redraw.current ??= setTimeout(show, redrawMs);
  }, [show]);

  const load = useCallback(
    async (from: DeskStore, renew = false) => {
      const [submissions, decided] = await Promise.all([
        renew ? from.renewSnapshot() : from.submissions(),
        from.decisions(),
      ]);
      if (!submissions.ok) return setFault(submissions.fault);
      if (!decided.ok) return setFault(decided.fault);
      held.current = {
        submissions: new Map(submissions.value.map((each) => [each.key, each])),
        decisions: decided.value,
      };
      show();
    },
    [show],
  );

  const compute = useCallback(() => {
    if (!store || computeRun.current) return;
    const run = new AbortController();
    computeRun.current = run;
    const own = startPool();
    computePool.current = own;
    setComputing(true);
    const onResults = (results: readonly Result[]) => {
      for (const { key, computed } of results) {
        const known = held.current.submissions.get(key);
        if (known) held.current.submissions.set(key, { ...known, computed, isComputed: 1 });
      }
      showSoon();
    };
    runComputing({ store, pool: own, signal: run.signal, onResults }).finally(() => {
      own.dispose();
      store.renewSnapshot();
      if (computeRun.current !== run) return;
      computeRun.current = null;
      setComputing(false);
    });
  }, [store, startPool, showSoon]);

  const stopComputing = useCallback(() => {
    computeRun.current?.abort();
    computeRun.current = null;
    computePool.current?.dispose();
    setComputing(false);
  }, []);

  useEffect(() => {
    let left = false;
    let opened: DeskStore | null = null;
    const start = async () => {
      const outcome = await openStore();
      if (!outcome.ok) {
        setFault(outcome.fault);
        setChecks([]);
        return;
      }
      opened = outcome.value;
      if (left) return opened.close();
      setStore(opened);
      const [snapshot, decided] = await Promise.all([opened.snapshot(), opened.decisions()]);
      const known = snapshot.ok && decided.ok ? snapshot.value : null;
      if (known !== null && decided.ok) {
        held.current = {
          submissions: new Map(known.submissions.map((each) => [each.key, each])),
          decisions: decided.value,
        };
        show();
      }
      if (known?.fresh !== true) {
        // What was known is shown first.
        if (known !== null) await new Promise((resolve) => setTimeout(resolve, redrawMs));
        if (!left) await load(opened, true);
      }
      const begun = await opened.begunImports();
      if (begun.ok) setInterrupted(await interruptedImports(begun.value));
    };
    start();
    return () => {
      left = true;
      if (redraw.current) clearTimeout(redraw.current);
      importRun.current?.abort();
      computeRun.current?.abort();
      pool.current?.dispose();
      computePool.current?.dispose();
      opened?.close();
    };
  }, [openStore, load, show]);

  useEffect(() => {
    if (!store) return;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const leave = store.subscribe((change) => {
      const wait = change === "decisions" ? 0 : 2 * redrawMs;
      timer ??= setTimeout(() => {
        timer = null;
        load(store);
      }, wait);
    });
    return () => {
      leave();
      if (timer) clearTimeout(timer);
    };
  }, [store, load]);

  const waiting = checks?.some(({ latest }) => latest.isComputed === 0) ?? false;
  const stoppedByHand = useRef(false);
  useEffect(() => {
    if (!waiting || stoppedByHand.current || importing?.state === "running") return;
    const timer = setTimeout(compute, computeAfterMs);
    return () => clearTimeout(timer);
  }, [waiting, importing?.state, compute]);

  const waitingSources = useRef<AsyncIterable<Source>[]>([]);
  const takeOne = useCallback(
    async (store: DeskStore, sources: AsyncIterable<Source>) => {
      const run = new AbortController();
      importRun.current = run;
      const own = startPool();
      pool.current = own;
      let shown = 0;
      const end = await runImport(sources, {
        store,
        pool: own,
        restore: restorer(store, own),
        signal: run.signal,
        onProgress: (progress) => {
          if (Date.now() - shown < redrawMs / 2) return;
          shown = Date.now();
          setImporting(progress);
        },
      });
      own.dispose();
      stoppedByHand.current = false;
      await load(store, true);
      setImporting(end);
    },
    [startPool, load],
  );
  /** What comes while an import runs waits its turn. */
  const take = useCallback(
    async (sources: AsyncIterable<Source>) => {
      waitingSources.current.push(sources);
      if (!store || importRun.current) return;
      for (;;) {
        const next = waitingSources.current.shift();
        if (next === undefined) break;
        await takeOne(store, next);
      }
      importRun.current = null;
    },
    [store, takeOne],
  );
  useEffect(() => {
    const first = waitingSources.current.shift();
    if (store && first) take(first);
  }, [store, take]);

  return {
    store,
    fault,
    checks,
    decisions,
    importing,
    interrupted,
    computing,
    take,
    compute: () => {
      stoppedByHand.current = false;
      compute();
    },
    stopComputing: () => {
      stoppedByHand.current = true;
      stopComputing();
    },
    stopImport: () => {
      importRun.current?.abort();
      pool.current?.cancel();
    },
    closeImport: () => setImporting(null),
    forgetInterrupted: () => {
      for (const { key } of interrupted) store?.endImport(key);
      setInterrupted([]);
    },
    decide: async (decision) => {
      if (!store) return { ok: false, fault: noStore };
      const decided = await store.decide([decision]);
      if (decided.ok) {
        held.current = {
          ...held.current,
          decisions: [...held.current.decisions, decision],
        };
        show();
      }
      return decided;
    },
  };
}

const noStore: Fault = {
  code: "storeRefused",
  sentence: ["Not kept: this browser refuses to store anything here."],
};
