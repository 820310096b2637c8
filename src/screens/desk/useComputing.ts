import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Pool } from "../../compute/pool.ts";
import type { DeskStore, Result } from "../../storage/deskStore.ts";

export interface Computing {
  readonly computing: boolean;
  /** Stopped by a person or by the storage; else what waits is computed by itself. */
  readonly stopped: boolean;
  compute(): void;
  stopComputing(): void;
  /** Computing that was stopped by hand may begin by itself again. */
  allow(): void;
}

/** The list is there to be used before the calculation begins. */
const computeAfterMs = 1500;

/** Computes what waits, once `waiting` has stood for a moment and nothing is `busy`. */
export function useComputing({
  store,
  startPool,
  waiting,
  busy,
  onResults,
}: {
  store: DeskStore | null;
  startPool: () => Pool;
  waiting: boolean;
  busy: boolean;
  onResults: (results: readonly Result[]) => void;
}): Computing {
  const [computing, setComputing] = useState(false);
  const run = useRef<AbortController | null>(null);
  const pool = useRef<Pool | null>(null);
  const [stopped, setStopped] = useState(false);

  const compute = useCallback(async () => {
    if (!store || run.current) return;
    const own = new AbortController();
    run.current = own;
    setComputing(true);
    const { runComputing } = await import("./computeRun.ts");
    const hands = startPool();
    pool.current = hands;
    await runComputing({ store, pool: hands, signal: own.signal, onResults });
    hands.dispose();
    store.renewSnapshot();
    const left = await store.uncomputed(1);
    if (run.current !== own) return;
    run.current = null;
    setComputing(false);
    if (!left.ok || left.value.length > 0) setStopped(true);
  }, [store, startPool, onResults]);

  const stop = useCallback(() => {
    run.current?.abort();
    run.current = null;
    pool.current?.dispose();
  }, []);

  useEffect(() => {
    if (!waiting || stopped || busy) return;
    const timer = setTimeout(compute, computeAfterMs);
    return () => clearTimeout(timer);
  }, [waiting, stopped, busy, compute]);

  useEffect(() => stop, [stop]);

  return {
    computing,
    stopped,
    compute: () => {
      setStopped(false);
      compute();
    },
    stopComputing: () => {
      setStopped(true);
      stop();
      setComputing(false);
    },
    allow: () => setStopped(false),
  };
}
