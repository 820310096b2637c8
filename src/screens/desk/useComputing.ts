import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Pool } from "../../compute/pool.ts";
import type { DeskStore, Result } from "../../storage/deskStore.ts";

export interface Computing {
  readonly computing: boolean;
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
  const stoppedByHand = useRef(false);

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
    if (run.current !== own) return;
    run.current = null;
    setComputing(false);
  }, [store, startPool, onResults]);

  const stop = useCallback(() => {
    run.current?.abort();
    run.current = null;
    pool.current?.dispose();
  }, []);

  useEffect(() => {
    if (!waiting || stoppedByHand.current || busy) return;
    const timer = setTimeout(compute, computeAfterMs);
    return () => clearTimeout(timer);
  }, [waiting, busy, compute]);

  useEffect(() => stop, [stop]);

  return {
    computing,
    compute: () => {
      stoppedByHand.current = false;
      compute();
    },
    stopComputing: () => {
      stoppedByHand.current = true;
      stop();
      setComputing(false);
    },
    allow: () => {
      stoppedByHand.current = false;
    },
  };
}
