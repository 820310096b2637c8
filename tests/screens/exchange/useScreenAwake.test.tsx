import { cleanup, render, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { useScreenAwake } from "../../../src/screens/parts/useScreenAwake.ts";

function Measuring({ wanted }: { wanted: boolean }) {
  useScreenAwake(wanted);
  return null;
}

/** A phone that gives locks, and takes them back by itself when the page is hidden. */
class FakeLocks {
  held = 0;
  asked = 0;
  refuse = false;
  private readonly locks = new Set<{ released: boolean }>();
  request = async () => {
    this.asked += 1;
    if (this.refuse) throw new DOMException("battery low", "NotAllowedError");
    const lock = {
      released: false,
      release: async () => {
        if (!lock.released) this.held -= 1;
        lock.released = true;
      },
    };
    this.held += 1;
    this.locks.add(lock);
    return lock;
  };
  pageHidden() {
    for (const lock of this.locks) {
      if (!lock.released) this.held -= 1;
      lock.released = true;
    }
  }
}

let locks: FakeLocks;

function pageIs(state: "visible" | "hidden") {
  vi.spyOn(document, "visibilityState", "get").mockReturnValue(state);
  if (state === "hidden") locks.pageHidden();
  document.dispatchEvent(new Event("visibilitychange"));
}

beforeEach(() => {
  locks = new FakeLocks();
  Object.defineProperty(navigator, "wakeLock", { value: locks, configurable: true });
});

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  Reflect.deleteProperty(navigator, "wakeLock");
});

it("holds the screen on while wanted, and lets go afterwards", async () => {
  const { rerender } = render(<Measuring wanted />);
  await waitFor(() => expect(locks.held).toBe(1));
  rerender(<Measuring wanted={false} />);
  await waitFor(() => expect(locks.held).toBe(0));
});

it("lets go when the page is hidden and takes it again when it is shown", async () => {
  const { unmount } = render(<Measuring wanted />);
  await waitFor(() => expect(locks.held).toBe(1));
  pageIs("hidden");
  expect(locks.held).toBe(0);
  expect(locks.asked).toBe(1);
  pageIs("visible");
  await waitFor(() => expect(locks.held).toBe(1));
  unmount();
  await waitFor(() => expect(locks.held).toBe(0));
});

it("asks for nothing where it is not wanted, and lives with a refusal", async () => {
  render(<Measuring wanted={false} />);
  pageIs("visible");
  expect(locks.asked).toBe(0);
  cleanup();
  locks.refuse = true;
  render(<Measuring wanted />);
  await waitFor(() => expect(locks.asked).toBe(1));
  expect(locks.held).toBe(0);
});
