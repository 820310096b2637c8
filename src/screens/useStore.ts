import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Fault, Outcome } from "../physics/outcome.ts";
import type { CheckStore } from "../storage/checkStore.ts";

export interface OpenedStore {
  readonly store: CheckStore;
  /** Why nothing is kept; null where it is. */
  readonly fault: Fault | null;
  readonly tryAgain: () => void;
}

/** How soon it is tried again by itself where another tab or a busy phone held it up, ms. */
const tryAgainAfter = 3000;
const passing: readonly string[] = ["storeBlocked", "storeSilent"];

/** Fetched only where the browser refuses its storage. */
const memoryStore = () => import("../storage/withoutStorage.ts");

/** What was held only in memory so far is kept as soon as it can be. */
async function moveAll(from: CheckStore, to: CheckStore): Promise<void> {
  const held = await from.list();
  if (!held.ok) return;
  for (const { id } of held.value) {
    const whole = await from.get(id);
    if (whole.ok && whole.value !== null) await to.put(whole.value);
  }
}

/** The store of checks, or one that holds them only while the page is open. Null: still opening. */
export function useStore(open: () => Promise<Outcome<CheckStore>>): OpenedStore | null {
  const [attempt, setAttempt] = useState(0);
  const [opened, setOpened] = useState<OpenedStore | null>(null);
  const before = useRef<OpenedStore | null>(null);
  // Begun before the first paint, not after it.
  useLayoutEffect(() => {
    let left = false;
    const tryAgain = () => setAttempt((count) => count + 1);
    const start = async () => {
      const outcome = await open();
      if (left) return;
      const held = before.current?.fault ? before.current.store : null;
      if (outcome.ok && held) await moveAll(held, outcome.value);
      if (left) return;
      if (outcome.ok) before.current = { store: outcome.value, fault: null, tryAgain };
      else {
        const memory = await memoryStore().catch(() => null);
        if (left) return;
        if (memory === null) {
          setTimeout(tryAgain, tryAgainAfter);
          return;
        }
        const store = held ?? memory.withoutStorage(outcome.fault);
        before.current = { store, fault: outcome.fault, tryAgain };
      }
      setOpened(before.current);
    };
    start();
    return () => {
      left = true;
    };
  }, [open, attempt]);
  const code = opened?.fault?.code ?? "";
  useEffect(() => {
    if (!passing.includes(code)) return;
    const timer = setTimeout(() => setAttempt((count) => count + 1), tryAgainAfter);
    return () => clearTimeout(timer);
  }, [code, attempt]);
  return opened;
}
