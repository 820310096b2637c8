import { describe, expect, it, vi } from "vitest";
import { type OfflineWatch, watchOffline } from "../../../src/screens/offline/registration.ts";
import { FakeContainer, FakeWorker, secondVisit } from "./fakeServiceWorkers.ts";

// The order of service worker states and events is that of the W3C Service Workers specification,
// sections 2.1 (state), 2.2 (registration) and 3.4 (container).

interface Page {
  watch: OfflineWatch;
  reload: ReturnType<typeof vi.fn>;
  seenAgain(afterMs: number): void;
}

function openPage(container: FakeContainer | undefined): Page {
  const reload = vi.fn();
  let time = 0;
  let seen: (() => void) | undefined;
  const watch = watchOffline({
    release: "1",
    container: container?.asContainer(),
    reload,
    onSeenAgain: (callback) => {
      seen = callback;
    },
    now: () => time,
  });
  return {
    watch,
    reload,
    seenAgain(afterMs) {
      time += afterMs;
      seen?.();
    },
  };
}

/** Port messages travel as tasks of their own. */
async function settle(): Promise<void> {
  for (let turn = 0; turn < 5; turn++) await new Promise((done) => setTimeout(done, 2));
}

describe("first visit", () => {
  it("is ready only once the worker is active and says that everything is kept", async () => {
    const container = new FakeContainer();
    const { watch } = openPage(container);
    const worker = new FakeWorker("installing");
    await settle();
    container.registration.find(worker);
    expect(watch.state().kept).toBe("working");
    container.registration.letWait();
    await settle();
    expect(watch.state()).toEqual({ kept: "working", update: "none" });
    worker.kept = undefined;
    worker.become("activated");
    await settle();
    expect(watch.state().kept).toBe("working");
  });

  it("says ready after the worker's answer, and does not take the first claim for an update", async () => {
    const container = new FakeContainer();
    const { watch, reload } = openPage(container);
    const states: string[] = [];
    watch.subscribe((state) => states.push(state.kept));
    await settle();
    const worker = new FakeWorker("installing");
    container.registration.find(worker);
    container.registration.letWait();
    worker.become("activated");
    container.control(worker);
    await settle();
    expect(states).toEqual(["kept"]);
    expect(watch.state()).toEqual({ kept: "kept", update: "none" });
    expect(reload).not.toHaveBeenCalled();
  });

  it("says not ready when a file could not be loaded", async () => {
    const container = new FakeContainer();
    const { watch } = openPage(container);
    await settle();
    const worker = new FakeWorker("installing");
    container.registration.find(worker);
    worker.become("redundant");
    expect(watch.state().kept).toBe("notKept");
  });

  it("says not possible without service workers, and when registering is refused", async () => {
    expect(openPage(undefined).watch.state().kept).toBe("notPossible");
    const container = new FakeContainer();
    container.refusal = new Error("SecurityError");
    const { watch } = openPage(container);
    await settle();
    expect(watch.state().kept).toBe("notPossible");
  });

  it("registers below the page's own path and never from the HTTP cache", async () => {
    const container = new FakeContainer();
    openPage(container);
    await settle();
    expect(container.registered).toEqual([
      { url: "./serviceWorker.js", options: { scope: "./", updateViaCache: "none" } },
    ]);
  });
});

describe("later visits", () => {
  it("asks the worker each time, and says not ready when the browser threw files away", async () => {
    const { container, active } = secondVisit();
    active.kept = false;
    const { watch } = openPage(container);
    await settle();
    expect(watch.state().kept).toBe("notKept");
    expect(active.messages.map((message) => message.type)).toEqual([
      "isEverythingKept",
      "pageStarted",
    ]);
  });

  it("finds a version that was left waiting", async () => {
    const { container } = secondVisit();
    container.registration.waiting = new FakeWorker("installed");
    const { watch } = openPage(container);
    await settle();
    expect(watch.state().update).toBe("waiting");
  });

  it("looks for a new version when seen again, at most once an hour", async () => {
    const { container } = secondVisit();
    const { seenAgain } = openPage(container);
    await settle();
    seenAgain(60_000);
    expect(container.registration.updates).toBe(0);
    seenAgain(3_600_000);
    expect(container.registration.updates).toBe(1);
    seenAgain(60_000);
    expect(container.registration.updates).toBe(1);
  });
});

describe("a new version", () => {
  async function withUpdate() {
    const { container } = secondVisit();
    const page = openPage(container);
    await settle();
    const next = new FakeWorker("installing");
    container.registration.find(next);
    container.registration.letWait();
    return { container, page, next };
  }

  it("waits until it is asked for; then the page that asked reloads, once it is in charge", async () => {
    const { container, page, next } = await withUpdate();
    expect(page.watch.state().update).toBe("waiting");
    expect(next.messages).toEqual([]);
    page.watch.takeUpdate();
    expect(next.messages).toEqual([{ type: "takeOver" }]);
    expect(page.reload).not.toHaveBeenCalled();
    container.control(next);
    expect(page.reload).toHaveBeenCalledTimes(1);
  });

  it("tells what it brings, asked of the version that waits", async () => {
    const { page, next } = await withUpdate();
    next.changes = ["A line."];
    expect(await page.watch.whatIsNew()).toEqual(["A line."]);
    expect(next.messages).toEqual([{ type: "whatIsNew" }]);
  });

  it("put off stays so until another tab takes it", async () => {
    const { container, page, next } = await withUpdate();
    page.watch.putOffUpdate();
    expect(page.watch.state()).toEqual({ kept: "kept", update: "none" });
    expect(next.messages).toEqual([]);
    container.control(next);
    expect(page.watch.state().update).toBe("replaced");
  });

  it("taken by another tab does not reload this one", async () => {
    const { container, page, next } = await withUpdate();
    container.registration.waiting = null;
    container.registration.active = next;
    container.control(next);
    expect(page.reload).not.toHaveBeenCalled();
    expect(page.watch.state().update).toBe("replaced");
    page.watch.takeUpdate();
    expect(page.reload).toHaveBeenCalledTimes(1);
  });

  it("taken by another tab is noticed by a page that no worker controlled", async () => {
    const { container } = secondVisit();
    container.controller = null;
    const page = openPage(container);
    await settle();
    container.control(new FakeWorker("activated"));
    expect(page.watch.state().update).toBe("replaced");
    expect(page.reload).not.toHaveBeenCalled();
  });

  it("that could not be loaded leaves the version at hand ready", async () => {
    const { container } = secondVisit();
    const page = openPage(container);
    await settle();
    const next = new FakeWorker("installing");
    container.registration.find(next);
    next.become("redundant");
    expect(page.watch.state()).toEqual({ kept: "kept", update: "none" });
  });
});
