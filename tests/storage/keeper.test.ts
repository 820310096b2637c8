import { inModelUnits } from "../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { IDBFactory, IDBObjectStore } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";
import { createKeeper, type Keeper, type KeepState } from "../../src/storage/keeper.ts";

let store: CheckStore;
const keepers: Keeper[] = [];

beforeEach(async () => {
  vi.stubGlobal("indexedDB", new IDBFactory());
  const opened = await openCheckStore(inModelUnits);
  if (!opened.ok) throw new Error("not opened");
  store = opened.value;
});

afterEach(async () => {
  vi.restoreAllMocks();
  for (const keeper of keepers.splice(0)) await keeper.dispose();
  store.close();
  vi.unstubAllGlobals();
});

function keeperFor(options: Parameters<typeof createKeeper>[1] = {}): Keeper {
  const keeper = createKeeper(store, options);
  keepers.push(keeper);
  return keeper;
}

function typed(stored: StoredCheck, text: string): StoredCheck {
  return setEntry(stored, "left.gap", { texts: [text], unit: "mm", tol: "" });
}

async function storedText(id: string): Promise<string | undefined> {
  const found = await store.get(id);
  return found.ok ? found.value?.entries["left.gap"]?.texts[0] : undefined;
}

describe("keeping while someone types", () => {
  it("writes the last of a burst, and says keeping, then kept", async () => {
    const states: KeepState[] = [];
    const put = vi.spyOn(store, "put");
    const keeper = keeperFor({ onState: (state) => states.push(state) });
    const stored = newStoredCheck();
    for (const text of ["2", "21", "21.5"]) keeper.keep(typed(stored, text));
    expect(keeper.state).toBe("keeping");
    await vi.waitFor(() => expect(keeper.state).toBe("kept"));
    expect(await storedText(stored.id)).toBe("21.5");
    expect(put).toHaveBeenCalledTimes(1);
    expect(states).toEqual(["keeping", "kept"]);
  });

  it("waits no longer than 250 ms whatever it is asked, and writes under steady typing too", async () => {
    vi.useFakeTimers();
    const put = vi.spyOn(store, "put").mockImplementation(async (value) => ({ ok: true, value }));
    const keeper = keeperFor({ delayMs: 5000 });
    const stored = newStoredCheck();
    keeper.keep(typed(stored, "1"));
    await vi.advanceTimersByTimeAsync(250);
    expect(put).toHaveBeenCalledTimes(1);
    for (let count = 0; count < 30; count += 1) {
      keeper.keep(typed(stored, `${count}`));
      await vi.advanceTimersByTimeAsync(100);
    }
    vi.useRealTimers();
    expect(put.mock.calls.length).toBeGreaterThanOrEqual(3);
    expect(put.mock.calls.length).toBeLessThanOrEqual(5);
  });

  it("loses nothing typed while a write is under way", async () => {
    const keeper = keeperFor();
    const stored = newStoredCheck();
    keeper.keep(typed(stored, "1"));
    const first = keeper.flush();
    keeper.keep(typed(stored, "12"));
    await first;
    await keeper.flush();
    expect(keeper.state).toBe("kept");
    expect(await storedText(stored.id)).toBe("12");
  });

  it.each(["pagehide", "visibilitychange"])("writes at once on %s", async (event) => {
    const keeper = keeperFor({ delayMs: 250 });
    const stored = newStoredCheck();
    const putAway = vi.spyOn(store, "putAway");
    keeper.keep(typed(stored, "21"));
    if (event === "pagehide") window.dispatchEvent(new Event("pagehide"));
    else {
      vi.spyOn(document, "visibilityState", "get").mockReturnValue("hidden");
      document.dispatchEvent(new Event("visibilitychange"));
    }
    expect(putAway).toHaveBeenCalledTimes(1);
    await vi.waitFor(() => expect(keeper.state).toBe("kept"));
    expect(await storedText(stored.id)).toBe("21");
  });

  it("puts a write that is under way away too, for the page may be gone before it ends", async () => {
    const keeper = keeperFor();
    const stored = typed(newStoredCheck(), "21");
    const putAway = vi.spyOn(store, "putAway");
    keeper.keep(stored);
    const writing = keeper.flush();
    window.dispatchEvent(new Event("pagehide"));
    expect(putAway).toHaveBeenCalledWith(stored);
    await writing;
    await keeper.flush();
    expect(keeper.state).toBe("kept");
  });

  it("after it is disposed of, what is pending is kept and the page is no longer heard", async () => {
    const keeper = createKeeper(store);
    const stored = newStoredCheck();
    keeper.keep(typed(stored, "21"));
    expect(await keeper.dispose()).toBe("kept");
    expect(await storedText(stored.id)).toBe("21");
    const put = vi.spyOn(store, "put");
    window.dispatchEvent(new Event("pagehide"));
    expect(put).not.toHaveBeenCalled();
  });
});

describe("when it is written", () => {
  const puts = (): string[] => {
    const texts: string[] = [];
    vi.spyOn(store, "put").mockImplementation(async (stored) => {
      texts.push(stored.entries["left.gap"]?.texts[0] ?? "");
      return { ok: true, value: stored };
    });
    return texts;
  };

  it.each([
    [150, {}],
    [20, { delayMs: 20 }],
    [250, { delayMs: 5000 }],
  ])("is after %i ms of quiet", async (quietMs, options) => {
    vi.useFakeTimers();
    const written = puts();
    const keeper = keeperFor(options);
    keeper.keep(typed(newStoredCheck(), "1"));
    await vi.advanceTimersByTimeAsync(10);
    keeper.keep(typed(newStoredCheck(), "12"));
    await vi.advanceTimersByTimeAsync(quietMs - 1);
    expect(written).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(written).toEqual(["12"]);
    vi.useRealTimers();
  });

  it("is a second after the first change under steady typing, each time anew", async () => {
    vi.useFakeTimers();
    const written = puts();
    const keeper = keeperFor();
    for (let count = 0; count < 23; count += 1) {
      keeper.keep(typed(newStoredCheck(), `${count}`));
      await vi.advanceTimersByTimeAsync(99);
      if (count === 9) expect(written).toEqual([]);
      await vi.advanceTimersByTimeAsync(1);
    }
    expect(written).toEqual(["9", "19"]);
    await vi.advanceTimersByTimeAsync(50);
    expect(written).toEqual(["9", "19", "22"]);
    vi.useRealTimers();
  });

  it("is once: what was written at once is not written again by its timer, nor tried again unasked", async () => {
    vi.useFakeTimers();
    const put = vi.spyOn(store, "put").mockResolvedValue({
      ok: false,
      fault: { code: "storeFull", sentence: ["Not saved: full."] },
    });
    const keeper = keeperFor();
    keeper.keep(typed(newStoredCheck(), "1"));
    await keeper.flush();
    await vi.advanceTimersByTimeAsync(2000);
    expect(put).toHaveBeenCalledTimes(1);
    put.mockRestore();
    vi.useRealTimers();
  });

  it("is not called kept before what was typed meanwhile is written too", async () => {
    const states: KeepState[] = [];
    const keeper = keeperFor({ onState: (state) => states.push(state) });
    const stored = newStoredCheck();
    const during: KeepState[] = [];
    const real = store.put.bind(store);
    vi.spyOn(store, "put").mockImplementation((given) => {
      during.push(keeper.state);
      return real(given);
    });
    keeper.keep(typed(stored, "1"));
    const [first, second] = [keeper.flush(), keeper.flush()];
    keeper.keep(typed(stored, "12"));
    expect(await second).toBe("kept");
    expect(await first).toBe("kept");
    expect(during).toEqual(["keeping", "keeping"]);
    expect(states).toEqual(["keeping", "kept"]);
    expect(await storedText(stored.id)).toBe("12");
  });

  it("is waited for by whoever asks while it is under way", async () => {
    const keeper = keeperFor();
    keeper.keep(typed(newStoredCheck(), "1"));
    void keeper.flush();
    expect(keeper.state).toBe("keeping");
    expect(await keeper.flush()).toBe("kept");
  });

  it("is nothing where nothing was typed", async () => {
    const states: KeepState[] = [];
    const put = vi.spyOn(store, "put");
    const keeper = keeperFor({ onState: (state) => states.push(state) });
    expect(await keeper.flush()).toBe("kept");
    expect(put).not.toHaveBeenCalled();
    expect(states).toEqual([]);
  });
});

describe("a page that is left", () => {
  const hide = (state: "hidden" | "visible" = "hidden") => {
    vi.spyOn(document, "visibilityState", "get").mockReturnValue(state);
    document.dispatchEvent(new Event("visibilitychange"));
  };

  it("has nothing put away where all is written, or where it is only seen again", async () => {
    const putAway = vi.spyOn(store, "putAway");
    const keeper = keeperFor();
    hide();
    window.dispatchEvent(new Event("pagehide"));
    keeper.keep(typed(newStoredCheck(), "21"));
    hide("visible");
    expect(putAway).not.toHaveBeenCalled();
    expect(await keeper.flush()).toBe("kept");
    hide();
    window.dispatchEvent(new Event("pagehide"));
    expect(putAway).not.toHaveBeenCalled();
  });

  it("has the newest put away, not what is being written", async () => {
    const putAway = vi.spyOn(store, "putAway");
    const keeper = keeperFor();
    const stored = newStoredCheck();
    keeper.keep(typed(stored, "2"));
    const writing = keeper.flush();
    const newest = typed(stored, "21");
    keeper.keep(newest);
    hide();
    expect(putAway.mock.calls).toEqual([[newest]]);
    await writing;
    expect(await keeper.flush()).toBe("kept");
    expect(await storedText(stored.id)).toBe("21");
  });

  it("is heard no more by one that was disposed of, whatever it could not write", async () => {
    const closing = new Set<() => void>();
    vi.spyOn(store, "onClosing").mockImplementation((listener) => {
      closing.add(listener);
      return () => closing.delete(listener);
    });
    const putAway = vi.spyOn(store, "putAway");
    vi.spyOn(store, "put").mockResolvedValue({
      ok: false,
      fault: { code: "storeFull", sentence: ["Not saved: full."] },
    });
    const keeper = createKeeper(store);
    keeper.keep(typed(newStoredCheck(), "21"));
    for (const listener of closing) listener();
    expect(putAway).toHaveBeenCalledTimes(1);
    expect(await keeper.dispose()).toEqual({ notKept: ["Not saved: full."] });
    hide();
    window.dispatchEvent(new Event("pagehide"));
    for (const listener of closing) listener();
    expect(putAway).toHaveBeenCalledTimes(1);
  });

  it("need not be one: without a window checks are kept all the same", async () => {
    vi.stubGlobal("window", undefined);
    const keeper = createKeeper(store);
    const stored = newStoredCheck();
    keeper.keep(typed(stored, "21"));
    expect(await keeper.dispose()).toBe("kept");
    expect(await storedText(stored.id)).toBe("21");
  });
});

describe("keeping that fails", () => {
  it("is told each time it is tried, and once it is kept", async () => {
    const states: KeepState[] = [];
    const keeper = keeperFor({ onState: (state) => states.push(state) });
    const notKept = ["Not saved: full."];
    const spy = vi.spyOn(store, "put").mockImplementation(async () => ({
      ok: false,
      fault: { code: "storeFull", sentence: notKept },
    }));
    keeper.keep(typed(newStoredCheck(), "2"));
    await keeper.flush();
    await keeper.flush();
    expect(spy).toHaveBeenCalledTimes(2);
    spy.mockRestore();
    await keeper.flush();
    expect(states).toEqual(["keeping", { notKept }, "keeping", { notKept }, "keeping", "kept"]);
  });

  it("says why, keeps what it could not write, and writes it when there is room again", async () => {
    const states: KeepState[] = [];
    const keeper = keeperFor({ onState: (state) => states.push(state) });
    const stored = newStoredCheck();
    const put = IDBObjectStore.prototype.put;
    const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    keeper.keep(typed(stored, "21"));
    await keeper.flush();
    const failed = states.at(-1);
    if (typeof failed !== "object") throw new Error("kept");
    expect(inModelUnits(failed.notKept)).toMatch(/^Not saved: the storage of this phone is full/);
    spy.mockImplementation(put);
    expect(await keeper.flush()).toBe("kept");
    expect(await storedText(stored.id)).toBe("21");
  });

  it("writes the newer when more was typed before there was room", async () => {
    const keeper = keeperFor();
    const stored = newStoredCheck();
    const spy = vi.spyOn(store, "put").mockResolvedValue({
      ok: false,
      fault: { code: "storeFull", sentence: ["Not saved: full."] },
    });
    keeper.keep(typed(stored, "2"));
    await keeper.flush();
    keeper.keep(typed(stored, "21"));
    await keeper.flush();
    expect(keeper.state).toEqual({ notKept: ["Not saved: full."] });
    spy.mockRestore();
    expect(await keeper.flush()).toBe("kept");
    expect(await storedText(stored.id)).toBe("21");
  });
});

describe("another tab's changes", () => {
  it("are handed to the screen once they are joined in, and not for an ordinary write", async () => {
    const joined: StoredCheck[] = [];
    const keeper = keeperFor({ onJoined: (stored) => joined.push(stored) });
    const stored = newStoredCheck();
    keeper.keep(stored);
    await keeper.flush();
    keeper.keep(typed(stored, "20"));
    await keeper.flush();
    expect(joined).toEqual([]);
    const other = await openCheckStore(inModelUnits);
    if (!other.ok) throw new Error("not opened");
    const seen = await other.value.get(stored.id);
    if (!seen.ok || seen.value === null) throw new Error("not found");
    const right = { texts: ["22"], unit: "mm" as const, tol: "" };
    await other.value.put(setEntry(seen.value, "right.gap", right));
    keeper.keep(typed(stored, "21"));
    await keeper.flush();
    expect(joined).toHaveLength(1);
    expect(joined[0]?.entries["left.gap"]?.texts).toEqual(["21"]);
    expect(joined[0]?.entries["right.gap"]?.texts).toEqual(["22"]);
    // What was typed since is newer than what was joined: the screen keeps it.
    await other.value.put(setEntry(joined[0] ?? stored, "armAngle", right));
    keeper.keep(typed(stored, "21"));
    const writing = keeper.flush();
    keeper.keep(typed(stored, "21.5"));
    await writing;
    expect(joined.map((each) => each.entries["left.gap"]?.texts)).toEqual([["21"], ["21.5"]]);
    other.value.close();
  });
});
