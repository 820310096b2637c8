import { inModelUnits } from "../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { IDBDatabase, IDBObjectStore } from "fake-indexeddb";
import { describe, expect, it, vi } from "vitest";
import type { ListedCheck } from "../../src/records/check/listedCheck.ts";
import {
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { openCheckStore, type StoreChange } from "../../src/storage/checkStore.ts";
import { databaseName } from "../../src/storage/database.ts";
import { createKeeper } from "../../src/storage/keeper.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

vi.setConfig({ testTimeout: 30_000 });

freshBrowsers();

function typed(stored: StoredCheck, id: string, ...texts: string[]): StoredCheck {
  return setEntry(stored, id, { texts, unit: "mm", tol: "1" });
}

function gap(stored: ListedCheck | null): string | undefined {
  return stored?.entries["left.gap"]?.texts[0];
}

/** As when the quota is reached, until the function returned is called. */
function fill(): () => void {
  const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  return () => spy.mockRestore();
}

function leaving(): boolean {
  const event = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(event);
  return !event.defaultPrevented;
}

describe("a check that could not be written", () => {
  it("is held: opened and listed as it was typed, also where it never was on the phone", async () => {
    const store = await tab();
    const old = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await store.put(old));
    const makeRoom = fill();
    const fresh = typed(newStoredCheck("Bay 2"), "left.gap", "30");
    expect((await store.put(typed(old, "left.gap", "25"))).ok).toBe(false);
    expect((await store.put(fresh)).ok).toBe(false);
    expect(gap(value(await store.get(old.id)))).toBe("25");
    expect(gap(value(await store.get(fresh.id)))).toBe("30");
    expect(
      value(await store.list())
        .map(({ name }) => name)
        .sort(),
    ).toEqual(["Bay 1", "Bay 2"]);
    expect(store.unkept().map(({ name }) => name)).toEqual(["Bay 1", "Bay 2"]);
    makeRoom();
    for (const held of store.unkept()) value(await store.put(held));
    expect(store.unkept()).toEqual([]);
    const other = await tab();
    expect(gap(value(await other.get(old.id)))).toBe("25");
    expect(gap(value(await other.get(fresh.id)))).toBe("30");
    expect(value(await other.list())).toHaveLength(2);
  });

  it("is still joined with what another tab wrote meanwhile", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    const makeRoom = fill();
    expect((await one.put(typed(stored, "left.gap", "25"))).ok).toBe(false);
    makeRoom();
    value(await two.put(typed(seenByTwo, "right.gap", "40")));
    const again = value(await one.get(stored.id)) as StoredCheck;
    const joined = value(await one.put(typed(again, "armAngle", "8")));
    expect(Object.keys(joined.entries).sort()).toEqual(["armAngle", "left.gap", "right.gap"]);
  });

  it("has the browser ask before the page is closed, until it is written", async () => {
    // A page of its own: what another test's store still holds asks as well.
    vi.stubGlobal("window", new EventTarget());
    const store = await tab();
    const stored = newStoredCheck("Bay 1");
    expect(leaving()).toBe(true);
    const makeRoom = fill();
    await store.put(stored);
    expect(leaving()).toBe(false);
    makeRoom();
    await store.put(stored);
    expect(leaving()).toBe(true);
    fill();
    await store.put(typed(stored, "left.gap", "1"));
    store.close();
    expect(leaving()).toBe(true);
  });

  it("can be read while the storage can't be read at all", async () => {
    const store = await tab();
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    const makeRoom = fill();
    await store.put(stored);
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
      throw new DOMException("gone", "NotFoundError");
    });
    expect(gap(value(await store.get(stored.id)))).toBe("21");
    expect(value(await store.list())).toHaveLength(1);
    expect((await store.get("another")).ok).toBe(false);
    makeRoom();
  });
});

describe("a change to a check that could not be written", () => {
  const held = async (stored: StoredCheck, text: string) => {
    const store = await tab();
    value(await store.put(stored));
    const makeRoom = fill();
    await store.put(typed(stored, "left.gap", text));
    return { store, makeRoom };
  };

  it("is made to what was typed, and writes both", async () => {
    const stored = newStoredCheck("Bay 1");
    const { store, makeRoom } = await held(stored, "25");
    makeRoom();
    const renamed = value(await store.update(stored.id, (each) => renameStored(each, "Bay 9")));
    expect([renamed.name, gap(renamed)]).toEqual(["Bay 9", "25"]);
    expect(store.unkept()).toEqual([]);
    const [listed, ...more] = value(await (await tab()).list());
    expect([listed?.name, gap(listed ?? null), more.length]).toEqual(["Bay 9", "25", 0]);
  });

  it("deletes it, also where it never was on the phone, and that can be undone", async () => {
    const { store, makeRoom } = await held(newStoredCheck("Bay 1"), "25");
    const fresh = typed(newStoredCheck("Bay 2"), "left.gap", "30");
    await store.put(fresh);
    makeRoom();
    const other = await tab();
    const heard: StoreChange[] = [];
    other.subscribe((change) => heard.push(change));
    for (const { id } of store.unkept()) value(await store.remove(id));
    expect(value(await store.list())).toEqual([]);
    expect(store.unkept()).toEqual([]);
    expect(value(await other.list("deleted"))).toHaveLength(2);
    await vi.waitFor(() => expect(heard.map(({ kind }) => kind)).toEqual(["removed", "removed"]));
    expect(gap(value(await store.restore(fresh.id)))).toBe("30");
    expect(value(await store.list()).map(({ name }) => name)).toEqual(["Bay 2"]);
  });

  it("that can't be written either changes nothing: it is held as it was typed", async () => {
    const stored = newStoredCheck("Bay 1");
    const { store, makeRoom } = await held(stored, "25");
    expect(await store.remove(stored.id)).toMatchObject({ fault: { code: "storeFull" } });
    expect(value(await store.list()).map((each) => gap(each))).toEqual(["25"]);
    expect(store.unkept().map(({ deletedAt }) => deletedAt)).toEqual([undefined]);
    makeRoom();
  });
});

describe("the clock set back", () => {
  it("loses nothing, and what was changed last still counts as last", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime("2026-05-02T12:00:00Z");
    const [one, two] = [await tab(), await tab()];
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    vi.setSystemTime("2026-05-01T08:00:00Z");
    const kept = value(await two.put(typed(seenByTwo, "left.gap", "25")));
    vi.useRealTimers();
    expect(gap(value(await one.get(stored.id)))).toBe("25");
    expect(kept.updatedAt > stored.updatedAt).toBe(true);
    const again = await tab();
    expect(gap(value(await again.list())[0] ?? null)).toBe("25");
  });

  it("does not put a write off for ever", async () => {
    const store = await tab();
    vi.useFakeTimers();
    vi.setSystemTime("2026-05-02T12:00:00Z");
    const put = vi.spyOn(store, "put");
    put.mockImplementation(async (given) => ({ ok: true, value: given }));
    const keeper = createKeeper(store);
    const stored = newStoredCheck();
    for (let count = 0; count < 20; count += 1) {
      if (count === 2) vi.setSystemTime("2026-05-01T12:00:00Z");
      keeper.keep(typed(stored, "left.gap", `${count}`));
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(put).toHaveBeenCalled();
    vi.useRealTimers();
    await keeper.dispose();
  });
});

describe("a database handle that dies", () => {
  it.each(["InvalidStateError", "AbortError", "TransactionInactiveError", "UnknownError"])(
    "with %s is opened again and the write repeated",
    async (name) => {
      const store = await tab();
      const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
      vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementationOnce(() => {
        throw new DOMException("Connection to the database is lost.", name);
      });
      value(await store.put(stored));
      expect(gap(value(await (await tab()).get(stored.id)))).toBe("21");
      expect(store.unkept()).toEqual([]);
    },
  );

  it("opening once more is tried where an opening was broken off", async () => {
    const open = indexedDB.open.bind(indexedDB);
    const spy = vi.spyOn(indexedDB, "open").mockImplementationOnce(() => {
      throw new DOMException("The connection was closed.", "AbortError");
    });
    value(await (await tab()).put(newStoredCheck("Bay 1")));
    spy.mockImplementation(() => {
      throw new DOMException("The connection was closed.", "AbortError");
    });
    const refused = await openCheckStore(inModelUnits);
    expect(refused.ok ? "" : refused.fault.code).toBe("storeFailed");
    spy.mockImplementation(open);
    expect(value(await (await tab()).list())).toHaveLength(1);
  });
});

describe("a newer version that wants the storage", () => {
  it("gets it at once, and what was being typed is put away before", async () => {
    const store = await tab();
    const keeper = createKeeper(store, { delayMs: 250 });
    const stored = newStoredCheck("Bay 1");
    value(await store.put(stored));
    keeper.keep(typed(stored, "left.gap", "21"));
    const blocked = vi.fn();
    const upgraded = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(databaseName, 99);
      request.onblocked = blocked;
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    expect(blocked).not.toHaveBeenCalled();
    const unjoined = await new Promise<{ stored: StoredCheck }[]>((resolve) => {
      const request = upgraded.transaction("unjoined").objectStore("unjoined").getAll();
      request.onsuccess = () => resolve(request.result);
    });
    expect(unjoined.map((each) => gap(each.stored))).toEqual(["21"]);
    const state = await keeper.dispose();
    if (typeof state !== "object") throw new Error("kept by an older version");
    expect(inModelUnits(state.notKept)).toMatch(/newer version/);
    // What the old page still has is held there, to be saved as a file.
    expect(gap(value(await store.get(stored.id)))).toBe("21");
    upgraded.close();
  });
});
