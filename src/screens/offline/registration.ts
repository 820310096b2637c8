import type { ChangesAnswer, KeptAnswer, PageMessage } from "./messages.ts";

export interface OfflineState {
  /** kept only once the browser holds every file of the app; notPossible where it never will. */
  readonly kept: "working" | "kept" | "notKept" | "notPossible";
  /** replaced: another tab took the new version; this page still runs the one before. */
  readonly update: "none" | "waiting" | "replaced";
}

export interface OfflineWatch {
  /** The version of the app that this page runs. */
  readonly release: string;
  state(): OfflineState;
  subscribe(listener: (state: OfflineState) => void): () => void;
  /** Takes the new version and reloads this page, which asked for it, and no other. */
  takeUpdate(): void;
  /** Asks no more until the page is opened again, or another tab takes the new version. */
  putOffUpdate(): void;
  /** What the version that waits brings, a line each; nothing where it does not say. */
  whatIsNew(): Promise<readonly string[]>;
  /** Finds out anew whether the browser still holds everything. */
  look(): void;
}

export interface OfflineSurroundings {
  readonly release: string;
  /** Undefined where the browser has no service workers, or the page is not on a safe address. */
  readonly container: ServiceWorkerContainer | undefined;
  readonly reload: () => void;
  /** Calls back whenever the page is looked at again. */
  readonly onSeenAgain: (callback: () => void) => void;
  readonly now: () => number;
}

const hourMs = 3_600_000;

export function watchOffline(surroundings: OfflineSurroundings): OfflineWatch {
  const { container, reload } = surroundings;
  const listeners = new Set<(state: OfflineState) => void>();
  let state: OfflineState = {
    kept: container ? "working" : "notPossible",
    update: "none",
  };
  let registration: ServiceWorkerRegistration | undefined;
  let asked = false;

  const change = (part: Partial<OfflineState>): void => {
    const next = { ...state, ...part };
    if (next.kept === state.kept && next.update === state.update) return;
    state = next;
    for (const listener of listeners) listener(state);
  };

  const ask = <Answer>(worker: ServiceWorker, message: PageMessage): Promise<Answer> =>
    new Promise((answered) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = (event: MessageEvent<Answer>) => {
        channel.port1.close();
        answered(event.data);
      };
      worker.postMessage(message, [channel.port2]);
    });

  const askWhetherKept = async (worker: ServiceWorker): Promise<void> => {
    const { kept } = await ask<KeptAnswer>(worker, { type: "isEverythingKept" });
    change({ kept: kept ? "kept" : "notKept" });
  };

  const followInstalling = (worker: ServiceWorker, first: boolean): void => {
    worker.addEventListener("statechange", () => {
      if (worker.state === "installed" && !first) change({ update: "waiting" });
      if (worker.state === "activated" && first) askWhetherKept(worker);
      if (worker.state === "redundant" && first && state.kept === "working") {
        change({ kept: "notKept" });
      }
    });
  };

  let hadVersion = container !== undefined && container.controller !== null;

  const register = async (workers: ServiceWorkerContainer): Promise<ServiceWorkerRegistration> => {
    const found = await workers.register("./serviceWorker.js", {
      scope: "./",
      updateViaCache: "none",
    });
    registration = found;
    const { active, waiting, installing } = found;
    if (active) hadVersion = true;
    if (active && waiting) change({ update: "waiting" });
    if (installing) followInstalling(installing, !active);
    found.addEventListener("updatefound", () => {
      if (found.installing) followInstalling(found.installing, !found.active);
    });
    if (active) askWhetherKept(active);
    return found;
  };

  /** Browser or person may have thrown the files away, or the worker that serves them. */
  const look = async (): Promise<void> => {
    if (!container || !registration) return;
    if ((await container.getRegistration("./")) === undefined) {
      hadVersion = false;
      change({ kept: "working" });
      await register(container);
    } else if (registration.active) {
      askWhetherKept(registration.active);
    }
  };
  const lookQuietly = (): void => {
    look().catch(() => change({ kept: "notKept" }));
  };

  const start = async (workers: ServiceWorkerContainer): Promise<void> => {
    const hadController = workers.controller !== null;
    workers.addEventListener("controllerchange", () => {
      if (asked) reload();
      else if (hadVersion) change({ update: "replaced" });
      hadVersion = true;
    });
    const { active } = await register(workers);
    if (active && hadController) {
      const message: PageMessage = { type: "pageStarted" };
      active.postMessage(message);
    }
    let lastUpdate = surroundings.now();
    surroundings.onSeenAgain(() => {
      lookQuietly();
      const time = surroundings.now();
      // The clock may have been set back since.
      if (Math.abs(time - lastUpdate) < hourMs) return;
      lastUpdate = time;
      // Without a signal this fails, and the version at hand goes on.
      registration?.update().catch(() => undefined);
    });
  };

  if (container) start(container).catch(() => change({ kept: "notPossible" }));

  return {
    release: surroundings.release,
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    takeUpdate() {
      asked = true;
      const waiting = registration?.waiting;
      if (!waiting) {
        reload();
        return;
      }
      const message: PageMessage = { type: "takeOver" };
      waiting.postMessage(message);
    },
    putOffUpdate: () => change({ update: "none" }),
    async whatIsNew() {
      const worker = registration?.waiting ?? registration?.active;
      if (!worker) return [];
      return (await ask<ChangesAnswer>(worker, { type: "whatIsNew" })).changes;
    },
    look: lookQuietly,
  };
}

let theWatch: OfflineWatch | undefined;

/** The one watch of this page. */
export function offlineWatch(): OfflineWatch {
  theWatch ??= watchOffline({
    release: import.meta.env.VITE_RELEASE,
    container: "serviceWorker" in navigator ? navigator.serviceWorker : undefined,
    reload: () => location.reload(),
    onSeenAgain: (callback) =>
      document.addEventListener("visibilitychange", () => {
        if (document.visibilityState === "visible") callback();
      }),
    now: () => Date.now(),
  });
  return theWatch;
}
