import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { databaseName } from "../../src/storage/database.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const typed = (stored: StoredCheck, id: string, text: string) =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1" });
const text = (stored: StoredCheck | null, id = "left.gap") => stored?.entries[id]?.texts[0];
const bay = () => newStoredCheck("Bay 1");
const photo = (letter: string) => ({ type: "image/png" as const, data: letter.repeat(500) });
const withPhotos = (stored: StoredCheck, ...letters: string[]): StoredCheck => ({
  ...stored,
  record: { ...stored.record, photos: letters.map(photo) },
});

interface Waiting {
  readonly key: string;
  readonly stored: StoredCheck;
  readonly base: StoredCheck | null;
}
const waiting = async () => (await rowsOf(databaseName, "unjoined")) as Waiting[];

function fill(): () => void {
  const spy = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  return () => spy.mockRestore();
}

describe("putting away", () => {
  it("is by check and tab, with what it grew from, in the database and as a text", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = value(await one.put(bay()));
    const seen = value(await two.get(stored.id)) as StoredCheck;
    one.putAway(typed(stored, "left.gap", "20"));
    one.putAway(typed(stored, "left.gap", "21"));
    two.putAway(typed(seen, "right.gap", "30"));
    const rows = await waiting();
    expect(rows.map((row) => row.stored.entries)).toHaveLength(2);
    expect(rows.map(({ base }) => base?.id)).toEqual([stored.id, stored.id]);
    expect(rows.map(({ base }) => text(base))).toEqual([undefined, undefined]);
    expect(Object.keys(localStorage).sort()).toEqual(
      rows.map(({ key }) => `${databaseName}.away ${key}`).sort(),
    );
    for (const { key } of rows) expect(key.startsWith(`${stored.id} `)).toBe(true);
    const joined = value(await (await tab()).get(stored.id));
    expect([text(joined), text(joined, "right.gap")]).toEqual(["21", "30"]);
  });

  it("of a check that was never written waits without anything it grew from", async () => {
    const store = await tab();
    const stored = typed(bay(), "left.gap", "21");
    store.putAway(stored);
    expect((await waiting()).map(({ base }) => base)).toEqual([null]);
    const next = await tab();
    expect(text(value(await next.get(stored.id)))).toBe("21");
    expect(await waiting()).toEqual([]);
    expect(Object.keys(localStorage)).toEqual([]);
  });

  it("does nothing once the store is closed", async () => {
    const store = await tab();
    store.close();
    store.putAway(bay());
    expect(Object.keys(localStorage)).toEqual([]);
    expect(await waiting()).toEqual([]);
  });

  it("where the handle has died leaves the text, and the next write opens another", async () => {
    const store = await tab();
    const stored = bay();
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementationOnce(() => {
      throw new DOMException("closing", "InvalidStateError");
    });
    const opens = vi.spyOn(indexedDB, "open");
    expect(() => store.putAway(stored)).not.toThrow();
    expect(Object.keys(localStorage)).toHaveLength(1);
    value(await store.put(stored));
    expect(opens).toHaveBeenCalledTimes(1);
    expect(Object.keys(localStorage)).toEqual([]);
  });
});

describe("the next opening", () => {
  it("writes nothing where nothing waits", async () => {
    const store = await tab();
    value(await store.put(bay()));
    store.close();
    const begun = vi.spyOn(IDBDatabase.prototype, "transaction");
    await tab();
    expect(begun.mock.results.map(({ value: one }) => one.mode)).toEqual(["readonly"]);
  });

  it.each(["database", "text"])("joins in what stands in the %s alone", async (where) => {
    const store = await tab();
    const stored = value(await store.put(bay()));
    store.putAway(typed(stored, "left.gap", "21"));
    if (where === "database") localStorage.clear();
    else {
      await new Promise<void>((resolve) => {
        const opening = indexedDB.open(databaseName);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction("unjoined", "readwrite");
          transaction.objectStore("unjoined").clear();
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      });
    }
    expect(text(value(await (await tab()).get(stored.id)))).toBe("21");
    expect(await waiting()).toEqual([]);
    expect(Object.keys(localStorage)).toEqual([]);
  });

  it("takes the pictures from the database where a text has the same without them", async () => {
    const store = await tab();
    const stored = withPhotos(bay(), "A");
    value(await store.put(stored));
    const edited = withPhotos(typed(stored, "left.gap", "21"), "A", "B");
    store.putAway(edited);
    const [place = ""] = Object.keys(localStorage);
    const away = JSON.parse(localStorage.getItem(place) ?? "");
    localStorage.setItem(place, JSON.stringify({ ...away, stored: bay() }));
    const joined = value(await (await tab()).get(stored.id));
    expect(text(joined)).toBe("21");
    expect(joined?.record.photos).toEqual([photo("A"), photo("B")]);
  });

  it("writes no version more where the ordinary write had gone through after all", async () => {
    const [store, other] = [await tab(), await tab()];
    const stored = value(await store.put(bay()));
    const edited = typed(stored, "left.gap", "21");
    const seen = value(await other.get(stored.id)) as StoredCheck;
    store.putAway(edited);
    const written = value(await other.put({ ...seen, ...edited }));
    const next = await tab();
    expect(value(await next.get(stored.id))).toEqual(written);
    expect(await waiting()).toEqual([]);
  });

  it("counts what it joined as the newest, also where the clock was set back", async () => {
    const [store, other] = [await tab(), await tab()];
    const stored = value(await store.put({ ...bay(), updatedAt: "2026-05-02T10:00:00.000Z" }));
    const seen = value(await other.get(stored.id)) as StoredCheck;
    store.putAway({
      ...typed(stored, "left.gap", "21"),
      updatedAt: "2026-05-02T09:00:00.000Z",
    });
    value(
      await other.put({ ...typed(seen, "right.gap", "30"), updatedAt: "2026-05-02T11:00:00.000Z" }),
    );
    const joined = value(await (await tab()).get(stored.id));
    expect([text(joined), text(joined, "right.gap")]).toEqual(["21", "30"]);
    expect(joined?.updatedAt).toBe("2026-05-02T11:00:00.001Z");
    expect(joined?.revision).toBe(3);
  });

  it("joins what was put away of one check beside what was put away of another", async () => {
    const [one, two] = [await tab(), await tab()];
    const [first, second] = [typed(bay(), "left.gap", "1"), typed(bay(), "left.gap", "2")];
    one.putAway(first);
    two.putAway(second);
    const next = await tab();
    const gaps = value(await next.list()).map((each) => each.entries["left.gap"]?.texts[0]);
    expect(gaps.sort()).toEqual(["1", "2"]);
  });

  it("on a full phone lists and opens all the same; what was put away waits for room", async () => {
    const store = await tab();
    const stored = value(await store.put(bay()));
    store.putAway(typed(stored, "left.gap", "21"));
    const makeRoom = fill();
    const full = await tab();
    expect(value(await full.list()).map(({ name }) => name)).toEqual(["Bay 1"]);
    expect(text(value(await full.get(stored.id)))).toBeUndefined();
    expect(await waiting()).toHaveLength(1);
    expect(Object.keys(localStorage)).toHaveLength(1);
    makeRoom();
    expect(text(value(await (await tab()).get(stored.id)))).toBe("21");
    expect(await waiting()).toEqual([]);
    expect(Object.keys(localStorage)).toEqual([]);
  });
});
