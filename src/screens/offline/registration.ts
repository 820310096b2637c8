import type { KeptAnswer, PageMessage } from "./messages.ts";

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

  const askWhetherKept = (worker: ServiceWorker): void => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event: MessageEvent<KeptAnswer>) => {
      channel.port1.close();
      change({ kept: event.data.kept ? "kept" : "notKept" });
    };
    const message: PageMessage = { type: "isEverythingKept" };
    worker.postMessage(message, [channel.port2]);
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

  const start = async (workers: ServiceWorkerContainer): Promise<void> => {
    const hadController = workers.controller !== null;
    let hadVersion = hadController;
    workers.addEventListener("controllerchange", () => {
      if (asked) reload();
      else if (hadVersion) change({ update: "replaced" });
      hadVersion = true;
    });
    registration = await workers.register("./serviceWorker.js", {
      scope: "./",
      updateViaCache: "none",
    });
    const { active, waiting, installing } = registration;
    if (active) hadVersion = true;
    if (active && waiting) change({ update: "waiting" });
    if (installing) followInstalling(installing, !active);
    registration.addEventListener("updatefound", () => {
      const found = registration?.installing;
      if (found) followInstalling(found, !registration?.active);
    });
    if (active) askWhetherKept(active);
    if (active && hadController) {
      const message: PageMessage = { type: "pageStarted" };
      active.postMessage(message);
    }
    let lastLook = surroundings.now();
    surroundings.onSeenAgain(() => {
      const time = surroundings.now();
      if (time - lastLook < hourMs) return;
      lastLook = time;
      // Without a signal this fails, and the version at hand goes on.
      registration?.update().catch(() => undefined);
      if (registration?.active && state.kept !== "kept") askWhetherKept(registration.active);
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
