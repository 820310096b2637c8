import type { Outcome } from "../physics/outcome.ts";
import type { Sentence } from "../physics/sentence.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { CheckStore } from "./checkStore.ts";
import { contentOf, isSame } from "./sameContent.ts";

export type KeepState = "kept" | "keeping" | { readonly notKept: Sentence };

export interface KeeperOptions {
  readonly onState?: (state: KeepState) => void;
  /** Another tab's changes were joined in, and nothing has been typed here since. */
  readonly onJoined?: (stored: StoredCheck) => void;
  /** Quiet time before a write, ms. */
  readonly delayMs?: number;
}

/** Keeps one check while it is being filled in. */
export interface Keeper {
  readonly state: KeepState;
  keep(stored: StoredCheck): void;
  /** Writes at once what is not kept yet; also the way to try again after a failure. */
  flush(): Promise<KeepState>;
  /** Flushes and stops listening to the page. */
  dispose(): Promise<KeepState>;
}

const defaultDelayMs = 150;
/** Under steady typing a write still goes out this long after the first change. */
const longestDelayMs = 1000;

export function createKeeper(store: CheckStore, options: KeeperOptions = {}): Keeper {
  const delayMs = Math.min(options.delayMs ?? defaultDelayMs, 250);
  let state: KeepState = "kept";
  let pending: StoredCheck | null = null;
  let inFlight: StoredCheck | null = null;
  let pendingSince = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> | null = null;

  const setState = (next: KeepState): void => {
    const changed = next !== state;
    state = next;
    if (changed) options.onState?.(next);
  };

  const settle = (given: StoredCheck, outcome: Outcome<StoredCheck>): void => {
    if (!outcome.ok) {
      // What could not be kept stays pending unless something newer is.
      pending ??= given;
      setState({ notKept: outcome.fault.sentence });
      return;
    }
    if (pending !== null) return;
    setState("kept");
    // The store counts and dates its writes; anything else that differs came from another tab.
    if (!isSame(contentOf(outcome.value), contentOf(given))) options.onJoined?.(outcome.value);
  };

  const writeAll = async (): Promise<void> => {
    while (pending !== null) {
      const given = pending;
      pending = null;
      inFlight = given;
      const outcome = await store.put(given);
      inFlight = null;
      settle(given, outcome);
      if (!outcome.ok) return;
    }
  };

  const flush = async (): Promise<KeepState> => {
    clearTimeout(timer);
    // A write under way takes what is pending with it, unless it has just failed.
    if (writing !== null) await writing;
    if (pending !== null) {
      setState("keeping");
      writing ??= writeAll().finally(() => {
        writing = null;
      });
      await writing;
    }
    return state;
  };

  const onHide = (): void => {
    // A write that has begun may not end before the page is gone, so it is put away as well.
    pending ??= inFlight;
    if (pending !== null) store.putAway(pending);
    void flush();
  };
  const onVisibility = (): void => {
    if (document.visibilityState === "hidden") onHide();
  };
  const page = typeof window === "undefined" ? null : window;
  page?.addEventListener("pagehide", onHide);
  page?.document.addEventListener("visibilitychange", onVisibility);
  const leaveClosing = store.onClosing(onHide);

  return {
    get state() {
      return state;
    },
    keep(stored) {
      // Not the clock on the wall, which can be set back while someone types.
      const now = performance.now();
      if (pending === null) pendingSince = now;
      pending = stored;
      setState("keeping");
      clearTimeout(timer);
      const left = Math.max(0, pendingSince + longestDelayMs - now);
      timer = setTimeout(() => void flush(), Math.min(delayMs, left));
    },
    flush,
    dispose() {
      page?.removeEventListener("pagehide", onHide);
      page?.document.removeEventListener("visibilitychange", onVisibility);
      leaveClosing();
      return flush();
    },
  };
}
