import { act, cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import { OfflineNotice } from "../../../src/screens/offline/OfflineNotice.tsx";
import type { OfflineState, OfflineWatch } from "../../../src/screens/offline/registration.ts";

afterEach(cleanup);

class SetWatch implements OfflineWatch {
  readonly release = "7.8.9";
  readonly takeUpdate = vi.fn();
  readonly putOffUpdate = vi.fn();
  readonly look = vi.fn();
  changes: readonly string[] = [];
  private listeners = new Set<(state: OfflineState) => void>();
  private current: OfflineState;

  constructor(state: OfflineState) {
    this.current = state;
  }

  state(): OfflineState {
    return this.current;
  }

  whatIsNew(): Promise<readonly string[]> {
    return Promise.resolve(this.changes);
  }

  subscribe(listener: (state: OfflineState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  async set(state: OfflineState): Promise<void> {
    await act(() => {
      this.current = state;
      for (const listener of this.listeners) listener(state);
    });
  }

  get listenerCount(): number {
    return this.listeners.size;
  }
}

async function show(watch: OfflineWatch | null, filling = false) {
  const start = () => Promise.resolve(watch);
  const shown = render(<OfflineNotice filling={filling} start={start} />);
  await act(() => new Promise((done) => setTimeout(done, 10)));
  return {
    ...shown,
    fill: (now: boolean) => shown.rerender(<OfflineNotice filling={now} start={start} />),
  };
}

describe("ready offline", () => {
  it("is not said while files are still coming, is said once they are all here", async () => {
    const watch = new SetWatch({ kept: "working", update: "none" });
    const { container } = await show(watch);
    expect(container.textContent).toBe("Getting ready for use offline …");
    await watch.set({ kept: "kept", update: "none" });
    expect(screen.getByRole("status").textContent).toContain("Ready offline · version 7.8.9");
  });

  it("is not said when files are missing: the notice says what to do", async () => {
    await show(new SetWatch({ kept: "notKept", update: "none" }));
    expect(screen.getByRole("status").textContent).toContain("Not ready offline");
    expect(screen.getByRole("status").textContent).toContain("where there is a signal");
  });

  it("is not said by a browser that can't keep the app", async () => {
    await show(new SetWatch({ kept: "notPossible", update: "none" }));
    expect(screen.queryByText("Ready offline")).toBeNull();
    expect(screen.getByRole("status").textContent).toContain("can't save Stopfit");
  });

  it("says nothing while a check is being filled in", async () => {
    const { container } = await show(new SetWatch({ kept: "kept", update: "none" }), true);
    expect(container.textContent).toBe("");
  });

  it("says nothing where there is no service worker to watch", async () => {
    const { container } = await show(null);
    expect(container.textContent).toBe("");
  });
});

describe("a new version", () => {
  it("is asked for and taken only by a press", async () => {
    const watch = new SetWatch({ kept: "kept", update: "waiting" });
    await show(watch);
    expect(screen.getByText("A new version is ready.")).toBeTruthy();
    expect(watch.takeUpdate).not.toHaveBeenCalled();
    fireEvent.click(screen.getByRole("button", { name: "Update now" }));
    expect(watch.takeUpdate).toHaveBeenCalledTimes(1);
  });

  it("says what it brings, once the version that waits has told it", async () => {
    const watch = new SetWatch({ kept: "kept", update: "waiting" });
    watch.changes = ["Stops can be pressed.", "One thing to do."];
    await show(watch);
    const told = screen.getByText("What is new").closest("details");
    expect([...(told?.querySelectorAll("li") ?? [])].map((item) => item.textContent)).toEqual([
      "Stops can be pressed.",
      "One thing to do.",
    ]);
  });

  it("has nothing to unfold where it does not say what it brings", async () => {
    await show(new SetWatch({ kept: "kept", update: "waiting" }));
    expect(screen.queryByText("What is new")).toBeNull();
  });

  it("is put off by Later", async () => {
    const watch = new SetWatch({ kept: "kept", update: "waiting" });
    await show(watch);
    fireEvent.click(screen.getByRole("button", { name: "Later" }));
    expect(watch.putOffUpdate).toHaveBeenCalledTimes(1);
    expect(watch.takeUpdate).not.toHaveBeenCalled();
  });

  it("is asked for above the answer, where nothing else is said", async () => {
    const watch = new SetWatch({ kept: "kept", update: "none" });
    const start = () => Promise.resolve(watch);
    const { container } = render(<OfflineNotice filling={false} updateOnly start={start} />);
    await act(() => new Promise((done) => setTimeout(done, 10)));
    expect(container.textContent).toBe("");
    await watch.set({ kept: "kept", update: "waiting" });
    fireEvent.click(screen.getByRole("button", { name: "Update now" }));
    expect(watch.takeUpdate).toHaveBeenCalledTimes(1);
  });

  it("is not asked for in the middle of a check, and is asked for when it is left", async () => {
    const watch = new SetWatch({ kept: "kept", update: "none" });
    const { container, fill } = await show(watch, true);
    await watch.set({ kept: "kept", update: "waiting" });
    expect(container.textContent).toBe("");
    fill(false);
    expect(screen.getByRole("button", { name: "Update now" })).toBeTruthy();
  });

  it("taken by another tab is told apart and offered", async () => {
    const watch = new SetWatch({ kept: "kept", update: "replaced" });
    await show(watch);
    expect(screen.getByRole("status").textContent).toContain("Another tab took the new version");
    fireEvent.click(screen.getByRole("button", { name: "Load it here" }));
    expect(watch.takeUpdate).toHaveBeenCalledTimes(1);
  });
});

it("stops watching when it goes", async () => {
  const watch = new SetWatch({ kept: "kept", update: "none" });
  const { unmount } = await show(watch);
  expect(watch.listenerCount).toBe(1);
  await act(() => void unmount());
  await vi.waitFor(() => expect(watch.listenerCount).toBe(0));
});
