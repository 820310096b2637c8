import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import {
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { type CheckStore, openCheckStore, type StoreChange } from "../../src/storage/checkStore.ts";
import { databaseName } from "../../src/storage/database.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const code = (outcome: Outcome<unknown>) => (outcome.ok ? "kept" : outcome.fault.code);
const named = async (store: CheckStore, which?: "deleted") =>
  value(await store.list(which)).map(({ name }) => name);
const gapOf = (stored: StoredCheck | null) => stored?.entries["left.gap"]?.texts[0];
const typed = (stored: StoredCheck, text: string) =>
  setEntry(stored, "left.gap", { texts: [text], unit: "mm", tol: "1" });
const dated = (name: string, day: number): StoredCheck => ({
  ...newStoredCheck(name),
  updatedAt: `2026-03-0${day}T00:00:00.000Z`,
});
const photo = { type: "image/png" as const, data: "iVBORw0KGgo=" };
const withPhoto = (stored: StoredCheck): StoredCheck => ({
  ...stored,
  record: { ...stored.record, photos: [photo] },
});

/** As when the quota is reached, until the function returned is called. */
function fill(): () => void {
  const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  return () => spy.mockRestore();
}

/** As when nothing can be begun in the database. */
function unreadable(): void {
  vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
    throw new DOMException("gone", "NotFoundError");
  });
}

function heardBy(store: CheckStore): StoreChange[] {
  const heard: StoreChange[] = [];
  store.subscribe((change) => heard.push(change));
  return heard;
}

/** The ids of the checks whose pictures are stored. */
async function picturesOf(): Promise<string[]> {
  const rows = (await rowsOf(databaseName, "pictures")) as { readonly key: string }[];
  return rows.map(({ key }) => key.split(" ")[0] ?? "");
}

describe("the list", () => {
  it("has the newest change first, in whatever order they were written", async () => {
    const store = await tab();
    for (const day of [2, 4, 1, 3]) value(await store.put(dated(`day ${day}`, day)));
    expect(await named(store)).toEqual(["day 4", "day 3", "day 2", "day 1"]);
  });

  it("has what could not be written first, as it was typed, once, and where it belongs", async () => {
    const store = await tab();
    const [old, newer, gone] = [dated("old", 1), dated("newer", 3), dated("gone", 2)];
    for (const each of [old, newer, gone]) value(await store.put(each));
    value(await store.remove(gone.id));
    const makeRoom = fill();
    expect(code(await store.put(renameStored(old, "old, renamed")))).toBe("storeFull");
    const deleted = { ...dated("thrown away", 4), deletedAt: "2026-03-04T00:00:00.000Z" };
    expect(code(await store.put(deleted))).toBe("storeFull");
    expect(await named(store)).toEqual(["old, renamed", "newer"]);
    expect(await named(store, "deleted")).toEqual(["thrown away", "gone"]);
    makeRoom();
  });

  it("that can't be read is a fault, not an empty one", async () => {
    const store = await tab();
    unreadable();
    expect(code(await store.list())).toBe("storeFailed");
    expect(code(await store.setAside())).toBe("storeFailed");
    expect(code(await store.copy("a", "b"))).toBe("storeFailed");
    expect(code(await store.purge(new Date()))).toBe("storeFailed");
  });
});

describe("a check's writes", () => {
  it("are counted, the first one too where it was added", async () => {
    const store = await tab();
    const [put, added] = [newStoredCheck("put"), newStoredCheck("added")];
    expect(value(await store.put(put)).revision).toBe(1);
    expect(value(await store.put(put)).revision).toBe(2);
    value(await store.add({ ...added, revision: 7 }));
    expect(value(await store.get(added.id))).toEqual({ ...added, revision: 1 });
    expect(value(await store.remove(added.id)).revision).toBe(2);
    expect(value(await store.restore(added.id)).revision).toBe(3);
  });

  it("after it was added go on from what was added", async () => {
    const [store, other] = [await tab(), await tab()];
    const added = newStoredCheck("added");
    value(await store.add(added));
    const seen = value(await other.get(added.id)) as StoredCheck;
    value(await other.put(renameStored(seen, "renamed")));
    const joined = value(await store.put(typed(added, "21")));
    expect([joined.id, joined.name, gapOf(joined)]).toEqual([added.id, "renamed", "21"]);
  });

  it("stay under its own id, whatever a change makes of it", async () => {
    const store = await tab();
    const stored = newStoredCheck("Bay 1");
    value(await store.put(stored));
    const changed = value(await store.update(stored.id, (each) => ({ ...each, id: "other" })));
    expect(changed.id).toBe(stored.id);
    expect(value(await store.get("other"))).toBeNull();
    const gone = await store.update("other", (each) => each);
    expect(code(gone)).toBe("storeGone");
    expect(await named(store)).toEqual(["Bay 1"]);
  });

  it("read no picture again that is at hand, nor write one that is stored", async () => {
    const store = await tab();
    const stored = withPhoto(newStoredCheck("Bay 1"));
    value(await store.put(stored));
    const shown = value(await store.get(stored.id)) as StoredCheck;
    const [reads, writes] = [
      vi.spyOn(IDBObjectStore.prototype, "get"),
      vi.spyOn(IDBObjectStore.prototype, "put"),
    ];
    value(await store.put(typed(shown, "21")));
    const names = [reads, writes].map(({ mock }) =>
      (mock.contexts as IDBObjectStore[]).map(({ name }) => name),
    );
    expect(names).toEqual([["checks"], ["checks"]]);
    expect(value(await store.get(stored.id))?.record.photos).toEqual([photo]);
  });

  it("are on disk before they count as done", async () => {
    const store = await tab();
    const begun = vi.spyOn(IDBDatabase.prototype, "transaction");
    const stored = newStoredCheck("Bay 1");
    value(await store.put(stored));
    store.putAway(stored);
    const writing = begun.mock.results.filter(({ value: one }) => one.mode === "readwrite");
    expect(writing.map(({ value: one }) => one.durability)).toEqual(["strict", "strict"]);
  });
});

describe("purging", () => {
  it("takes what was deleted before the moment with its pictures, and nothing else", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    const store = await tab();
    const [early, late, present] = ["early", "late", "present"].map((name) =>
      withPhoto(newStoredCheck(name)),
    ) as [StoredCheck, StoredCheck, StoredCheck];
    for (const each of [early, late, present]) value(await store.put(each));
    vi.setSystemTime("2026-05-02T10:00:00.000Z");
    value(await store.remove(early.id));
    vi.setSystemTime("2026-05-02T11:00:00.000Z");
    value(await store.remove(late.id));
    expect(value(await store.purge(new Date("2026-05-02T10:00:00.000Z")))).toBe(0);
    expect(value(await store.purge(new Date("2026-05-02T11:00:00.000Z")))).toBe(1);
    vi.useRealTimers();
    expect(await named(store, "deleted")).toEqual(["late"]);
    expect(await named(store)).toEqual(["present"]);
    expect((await picturesOf()).sort()).toEqual([late.id, present.id].sort());
  });

  it("tells how many, also where it is several", async () => {
    const store = await tab();
    for (const name of ["a", "b", "c"]) {
      const stored = newStoredCheck(name);
      value(await store.put(stored));
      if (name !== "c") value(await store.remove(stored.id));
    }
    expect(value(await store.purge(new Date(Date.now() + 1000)))).toBe(2);
    expect(await named(store)).toEqual(["c"]);
  });
});

describe("a row that is deleted for good", () => {
  it("takes its own pictures along, and is told as gone", async () => {
    const [store, other] = [await tab(), await tab()];
    const [gone, stays] = [withPhoto(newStoredCheck("gone")), withPhoto(newStoredCheck("stays"))];
    for (const each of [gone, stays]) value(await store.put(each));
    expect(JSON.parse(value(await store.rowText(gone.id))).record.photos).toMatchObject([photo]);
    const heard = heardBy(other);
    value(await store.discard(gone.id));
    expect(await named(store)).toEqual(["stays"]);
    expect(await picturesOf()).toEqual([stays.id]);
    await vi.waitFor(() => expect(heard).toEqual([{ id: gone.id, kind: "purged" }]));
  });
});

describe("other tabs", () => {
  it("hear of what was added, changed, copied, taken in and purged, by its id", async () => {
    const [store, other] = [await tab(), await tab()];
    const [added, taken] = [newStoredCheck("added"), newStoredCheck("taken")];
    const heard = heardBy(other);
    value(await store.add(added));
    value(await store.add(added));
    value(await store.update(added.id, (each) => renameStored(each, "renamed")));
    const copied = value(await store.copy(added.id, "copy"));
    const join = (current: StoredCheck) => current;
    expect(value(await store.takeIn(taken, join))).toEqual({ kind: "added" });
    expect(value(await store.takeIn(added, join))).toEqual({ kind: "present" });
    value(await store.remove(added.id));
    value(await store.purge(new Date(Date.now() + 1000)));
    await vi.waitFor(() =>
      expect(heard).toEqual([
        { id: added.id, kind: "kept" },
        { id: added.id, kind: "kept" },
        { id: copied.id, kind: "kept" },
        { id: taken.id, kind: "kept" },
        { id: added.id, kind: "removed" },
        { id: added.id, kind: "purged" },
      ]),
    );
  });

  it("hear of a check that was kept as a copy by the copy's id", async () => {
    const [store, other] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await store.put(typed(stored, "21")));
    const heard = heardBy(store);
    const copy = value(await other.put(typed(stored, "40")));
    await vi.waitFor(() => expect(heard).toEqual([{ id: copy.id, kind: "kept" }]));
  });

  it("hear nothing of what failed", async () => {
    const [store, other] = [await tab(), await tab()];
    const stored = newStoredCheck("Bay 1");
    value(await store.put(stored));
    const heard = heardBy(other);
    const makeRoom = fill();
    const refused = [
      await store.remove(stored.id),
      await store.put(stored),
      await store.add(newStoredCheck("Bay 2")),
      await store.takeIn(newStoredCheck("Bay 3"), (current) => current),
    ];
    expect(refused.map(code)).toEqual(refused.map(() => "storeFull"));
    makeRoom();
    vi.spyOn(IDBObjectStore.prototype, "delete").mockImplementationOnce(() => {
      throw new DOMException("gone", "NotFoundError");
    });
    expect(code(await store.discard(stored.id))).toBe("storeFailed");
    value(await store.restore(stored.id));
    await vi.waitFor(() => expect(heard).toEqual([{ id: stored.id, kind: "kept" }]));
  });

  it("hear nothing of a closed one, which hears nothing either, and holds nothing more", async () => {
    const [store, other] = [await tab(), await tab()];
    const [heard, own] = [heardBy(other), heardBy(store)];
    const stored = newStoredCheck("Bay 1");
    const makeRoom = fill();
    await store.put(stored);
    expect(store.unkept()).toEqual([stored]);
    makeRoom();
    const writing = store.put(newStoredCheck("Bay 2"));
    store.close();
    expect(store.unkept()).toEqual([]);
    expect(code(await writing)).toBe("kept");
    const third = await tab();
    value(await third.put(stored));
    await vi.waitFor(() => expect(heard).toEqual([{ id: stored.id, kind: "kept" }]));
    expect(own).toEqual([]);
  });

  it("need not be there: a browser without channels keeps checks all the same", async () => {
    vi.stubGlobal("BroadcastChannel", undefined);
    const store = await tab();
    value(await store.put(newStoredCheck("Bay 1")));
    expect(await named(store)).toEqual(["Bay 1"]);
    expect(() => store.close()).not.toThrow();
  });

  it("of another database are strangers", async () => {
    const store = await tab();
    const other = value(await openCheckStore(inModelUnits, "stopfit-of-a-test"));
    const heard = heardBy(other);
    value(await store.put(newStoredCheck("Bay 1")));
    expect(await named(other)).toEqual([]);
    const same = value(await openCheckStore(inModelUnits, "stopfit-of-a-test"));
    const stored = newStoredCheck("Bay 2");
    value(await same.put(stored));
    await vi.waitFor(() => expect(heard).toEqual([{ id: stored.id, kind: "kept" }]));
    for (const each of [other, same]) each.close();
  });
});
