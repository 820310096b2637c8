import { inModelUnits } from "../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { IDBObjectStore, IDBTransaction } from "fake-indexeddb";
import { describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import type { ListedCheck } from "../../src/records/check/listedCheck.ts";
import {
  changeRecord,
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { openCheckStore, type StoreChange } from "../../src/storage/checkStore.ts";
import { databaseName } from "../../src/storage/database.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

function code(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error("no fault");
  expect(inModelUnits(outcome.fault.sentence)).toMatch(/^Not saved: .*\.$/);
  return outcome.fault.code;
}

function typed(stored: StoredCheck, id: string, ...texts: string[]): StoredCheck {
  return setEntry(stored, id, { texts, unit: "mm", tol: "1" });
}

function gap(stored: ListedCheck | null, side: "left" | "right"): readonly number[] | undefined {
  return stored?.record.corners.find((corner) => corner.side === side)?.gap?.values;
}

describe("keeping checks", () => {
  it("gives back what was put, unreadable entries included, to a tab opened later", async () => {
    const first = await tab();
    const stored = typed(typed(newStoredCheck("Bay 1"), "left.gap", "21"), "right.gap", "2 5/");
    value(await first.put(stored));
    first.close();
    const second = await tab();
    const found = value(await second.get(stored.id));
    expect(found).toEqual({ ...stored, revision: 1 });
    expect(found?.entries["right.gap"]?.texts).toEqual(["2 5/"]);
    expect(value(await second.get("unknown"))).toBeNull();
  });

  it("lists the newest change first", async () => {
    const store = await tab();
    const old = { ...newStoredCheck("old"), updatedAt: "2026-01-01T00:00:00.000Z" };
    const recent = { ...newStoredCheck("recent"), updatedAt: "2026-03-01T00:00:00.000Z" };
    value(await store.put(recent));
    value(await store.put(old));
    expect(value(await store.list()).map(({ name }) => name)).toEqual(["recent", "old"]);
  });

  it("deletes softly, undoes it, and purges only what was deleted before a moment", async () => {
    const store = await tab();
    const stored = newStoredCheck("Bay 1");
    const other = newStoredCheck("Bay 2");
    value(await store.put(stored));
    value(await store.put(other));
    value(await store.remove(stored.id));
    expect(value(await store.list()).map(({ name }) => name)).toEqual(["Bay 2"]);
    expect(value(await store.list("deleted")).map(({ name }) => name)).toEqual(["Bay 1"]);
    expect(value(await store.purge(new Date(Date.now() - 60_000)))).toBe(0);
    const restored = value(await store.restore(stored.id));
    expect(restored.deletedAt).toBeUndefined();
    expect(value(await store.list())).toHaveLength(2);
    value(await store.remove(stored.id));
    expect(value(await store.purge(new Date(Date.now() + 1000)))).toBe(1);
    expect(value(await store.list("deleted"))).toEqual([]);
    expect(code(await store.restore(stored.id))).toBe("storeGone");
    expect(value(await store.list()).map(({ name }) => name)).toEqual(["Bay 2"]);
  });

  it("copies a check under an id of its own, and renames one", async () => {
    const store = await tab();
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await store.put(stored));
    const copy = value(await store.copy(stored.id, "Bay 1 again"));
    expect(copy.id).not.toBe(stored.id);
    expect(copy.record.id).toBe(copy.id);
    expect(gap(copy, "left")).toEqual([21]);
    value(await store.update(stored.id, (each) => renameStored(each, "Bay 9")));
    const names = value(await store.list()).map(({ name }) => name);
    expect(names.sort()).toEqual(["Bay 1 again", "Bay 9"]);
    expect(code(await store.copy("unknown", "x"))).toBe("storeGone");
  });

  it("adds a demo check once, and not again after it was deleted", async () => {
    const store = await tab();
    const stored = newStoredCheck("Demo");
    expect(value(await store.add(stored))).toBe(true);
    expect(value(await store.add(stored))).toBe(false);
    value(await store.remove(stored.id));
    expect(value(await store.add(stored))).toBe(false);
    expect(value(await store.list())).toEqual([]);
  });
});

describe("two tabs", () => {
  it("keep both readings when each types another", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    value(await one.put(typed(stored, "left.gap", "21")));
    const joined = value(await two.put(typed(seenByTwo, "right.gap", "22")));
    expect(gap(joined, "left")).toEqual([21]);
    expect(gap(joined, "right")).toEqual([22]);
    expect(joined.entries["left.gap"]?.texts).toEqual(["21"]);
    // The first tab goes on from what it knows: it must not take the second one's reading away.
    const again = value(await one.put(typed(typed(stored, "left.gap", "21"), "armAngle", "8")));
    expect(gap(again, "right")).toEqual([22]);
    expect(again.entries.armAngle?.texts).toEqual(["8"]);
    expect(value(await two.get(stored.id))).toEqual(again);
  });

  it("keep a reading joined in while more was being typed, though the screen never took it", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    value(await two.put(typed(seenByTwo, "right.gap", "22")));
    const first = typed(stored, "left.gap", "21");
    expect(gap(value(await one.put(first)), "right")).toEqual([22]);
    // Typed before the outcome of that write came back: it knows nothing of the other tab's reading.
    const second = value(await one.put(typed(first, "left.rideHeight", "512")));
    expect(gap(second, "right")).toEqual([22]);
    expect(gap(second, "left")).toEqual([21]);
    expect(second.entries["left.rideHeight"]?.texts).toEqual(["512"]);
  });

  it("the newer wins where both type the very same reading", async () => {
    // Nobody types in two tabs within one millisecond.
    vi.useFakeTimers({ toFake: ["Date"] });
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    vi.setSystemTime(Date.now() + 1000);
    value(await one.put(typed(stored, "left.gap", "21")));
    vi.setSystemTime(Date.now() + 1000);
    const joined = value(await two.put(typed(seenByTwo, "left.gap", "23", "24")));
    vi.useRealTimers();
    expect(gap(joined, "left")).toEqual([23, 24]);
    expect(joined.entries["left.gap"]?.texts).toEqual(["23", "24"]);
  });

  it("what one tab clears stays cleared, what it chooses stays chosen", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    value(await one.put(typed(stored, "left.gap", "")));
    const joined = value(
      await two.put(changeRecord(seenByTwo, (record) => ({ ...record, axle: "rear" }))),
    );
    expect(gap(joined, "left")).toBeUndefined();
    expect(joined.record.axle).toBe("rear");
  });

  it("an edit brings back a check deleted in the other tab", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    value(await one.remove(stored.id));
    value(await two.put(typed(seenByTwo, "left.gap", "21")));
    expect(value(await one.list()).map((each) => gap(each, "left"))).toEqual([[21]]);
  });

  it("with no past in common both are kept, this one as a copy, and later writes follow the copy", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await one.put(typed(stored, "left.gap", "21")));
    const foreign = typed(stored, "left.gap", "40");
    const kept = value(await two.put(foreign));
    expect(kept.id).not.toBe(stored.id);
    expect(kept.name).toBe("Bay 1 (saved from another tab)");
    expect(gap(kept, "left")).toEqual([40]);
    value(await two.put(typed(foreign, "right.gap", "41")));
    const all = value(await one.list());
    expect(all).toHaveLength(2);
    expect(all.map((each) => gap(each, "left")?.[0]).sort()).toEqual([21, 40]);
    expect(gap(all.find(({ id }) => id === kept.id) ?? null, "right")).toEqual([41]);
  });

  it("are told of each other's changes, not of their own", async () => {
    const [one, two] = [await tab(), await tab()];
    const [heardByOne, heardByTwo]: [StoreChange[], StoreChange[]] = [[], []];
    one.subscribe((change) => heardByOne.push(change));
    const stop = two.subscribe((change) => heardByTwo.push(change));
    const stored = newStoredCheck("Bay 1");
    value(await one.put(stored));
    value(await one.remove(stored.id));
    await vi.waitFor(() => expect(heardByTwo).toHaveLength(2));
    expect(heardByTwo).toEqual([
      { id: stored.id, kind: "kept" },
      { id: stored.id, kind: "removed" },
    ]);
    expect(heardByOne).toEqual([]);
    stop();
    value(await one.purge(new Date(Date.now() + 1000)));
    value(await two.put(newStoredCheck("Bay 2")));
    await vi.waitFor(() => expect(heardByOne).toHaveLength(1));
    expect(heardByTwo).toHaveLength(2);
  });
});

describe("storage that fails", () => {
  it("is refused where the browser has none, or throws at the door", async () => {
    vi.stubGlobal("indexedDB", undefined);
    expect(code(await openCheckStore(inModelUnits))).toBe("storeRefused");
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new DOMException("denied", "SecurityError");
      },
    });
    expect(code(await openCheckStore(inModelUnits))).toBe("storeRefused");
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new DOMException("private", "InvalidStateError");
      },
    });
    expect(code(await openCheckStore(inModelUnits))).toBe("storeRefused");
  });

  it("is full when the quota is passed at the write, and what was stored is still whole", async () => {
    const store = await tab();
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await store.put(stored));
    const put = IDBObjectStore.prototype.put;
    const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    const edited = typed(stored, "left.gap", "25");
    expect(code(await store.put(edited))).toBe("storeFull");
    expect(code(await store.remove(stored.id))).toBe("storeFull");
    spy.mockImplementation(put);
    expect(gap(value(await (await tab()).get(stored.id)), "left")).toEqual([21]);
    expect(gap(value(await store.put(edited)), "left")).toEqual([25]);
  });

  it("is full when the quota is passed only as the transaction ends", async () => {
    const store = await tab();
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await store.put(stored));
    const put = IDBObjectStore.prototype.put;
    const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (
      this: IDBObjectStore,
      ...given
    ) {
      const request = put.apply(this, given);
      const transaction = this.transaction;
      Object.defineProperty(transaction, "error", {
        get: () => new DOMException("full", "QuotaExceededError"),
      });
      request.addEventListener("success", () => transaction.abort());
      return request;
    });
    expect(code(await store.put(typed(stored, "left.gap", "25")))).toBe("storeFull");
    spy.mockRestore();
    expect(gap(value(await (await tab()).get(stored.id)), "left")).toEqual([21]);
  });

  it("is opened again, and the write repeated, when its handle has died", async () => {
    const store = await tab();
    const stored = typed(newStoredCheck("Bay 1"), "left.gap", "21");
    value(await store.put(stored));
    const transaction = vi.spyOn(IDBTransaction.prototype, "objectStore");
    transaction.mockImplementationOnce(() => {
      throw new DOMException("The database connection is closing.", "InvalidStateError");
    });
    const kept = value(await store.put(typed(stored, "left.gap", "25")));
    expect(gap(kept, "left")).toEqual([25]);
    expect(gap(value(await store.get(stored.id)), "left")).toEqual([25]);
    transaction.mockImplementation(() => {
      throw new DOMException("The database connection is closing.", "InvalidStateError");
    });
    expect(code(await store.put(stored))).toBe("storeFailed");
  });

  it("is opened again after another tab had it closed for an upgrade", async () => {
    const store = await tab();
    value(await store.put(newStoredCheck("Bay 1")));
    await new Promise<void>((resolve, reject) => {
      const request = indexedDB.open(databaseName, 99);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
      request.onerror = () => reject(request.error);
    });
    // The stored version is newer than this code now: that is said, and nothing is overwritten.
    expect(code(await store.put(newStoredCheck("Bay 2")))).toBe("storeNewer");
  });

  it("is blocked when an older tab does not let go, and says so instead of waiting for ever", async () => {
    await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(`${databaseName}-old`, 1);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const original = indexedDB.open.bind(indexedDB);
    vi.spyOn(indexedDB, "open").mockImplementation((name) => original(`${name}-old`, 2));
    expect(code(await openCheckStore(inModelUnits))).toBe("storeBlocked");
  });

  it("that never answers is told as such", async () => {
    vi.useFakeTimers();
    vi.stubGlobal("indexedDB", {
      open: () => {
        const request: IDBOpenDBRequest = Object.create(IDBOpenDBRequest.prototype);
        request.addEventListener = () => undefined;
        request.removeEventListener = () => undefined;
        return request;
      },
    });
    const opening = openCheckStore(inModelUnits);
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(code(await opening)).toBe("storeSilent");
  });
});

describe("a page that goes", () => {
  it("puts the check away in the same turn; the next opening joins it in", async () => {
    const first = await tab();
    const stored = newStoredCheck("Bay 1");
    value(await first.put(stored));
    first.putAway(typed(stored, "left.gap", "21"));
    // Nothing more runs in that tab.
    const second = await tab();
    expect(gap(value(await second.get(stored.id)), "left")).toEqual([21]);
  });

  it("is joined with what another tab wrote meanwhile, once", async () => {
    const [first, other] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await first.put(stored));
    const seenByOther = value(await other.get(stored.id)) as StoredCheck;
    first.putAway(typed(stored, "left.gap", "21"));
    value(await other.put(typed(seenByOther, "right.gap", "22")));
    const third = await tab();
    const joined = value(await third.get(stored.id)) as StoredCheck;
    expect([gap(joined, "left"), gap(joined, "right")]).toEqual([[21], [22]]);
    value(await third.put(typed(joined, "left.gap", "30")));
    const fourth = await tab();
    expect(gap(value(await fourth.get(stored.id)), "left")).toEqual([30]);
  });

  it("is done with once the ordinary write has gone through", async () => {
    const [first, other] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    const edited = typed(stored, "left.gap", "21");
    first.putAway(edited);
    value(await first.put(edited));
    const seen = value(await other.get(stored.id)) as StoredCheck;
    value(await other.put(typed(seen, "left.gap", "30")));
    const later = await tab();
    expect(gap(value(await later.get(stored.id)), "left")).toEqual([30]);
    expect(value(await later.list())).toHaveLength(1);
  });
});
