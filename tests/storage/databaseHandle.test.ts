import "fake-indexeddb/auto";
import type { DBSchema } from "idb";
import { describe, expect, it, vi } from "vitest";
import { type Migration, SchemaHandle } from "../../src/storage/databaseHandle.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

interface Shelf extends DBSchema {
  first: { key: string; value: { readonly id: string } };
  second: { key: string; value: { readonly id: string } };
}

const steps: readonly Migration<Shelf>[] = [
  (database) => database.createObjectStore("first", { keyPath: "id" }),
  (database) => database.createObjectStore("second", { keyPath: "id" }),
];

const handleOf = (migrations: readonly Migration<Shelf>[] = steps) =>
  closedLater(new SchemaHandle<Shelf>("shelf", migrations));

const closed = (name = "InvalidStateError") => new DOMException("closed", name);

describe("a database", () => {
  it("is opened once for all who ask, and again after it was closed", async () => {
    const opens = vi.spyOn(indexedDB, "open");
    const handle = handleOf();
    expect(handle.current).toBeNull();
    const [one, two] = await Promise.all([handle.open(), handle.open()]);
    expect(value(one)).toBe(value(two));
    expect(handle.current).toBe(value(one));
    await handle.open();
    expect(opens).toHaveBeenCalledTimes(1);
    handle.close();
    expect(handle.current).toBeNull();
    expect(() => handle.close()).not.toThrow();
    value(await handle.open());
    expect(opens).toHaveBeenCalledTimes(2);
  });

  it("is brought from the version it is of to the newest, by the steps it lacks", async () => {
    const first = handleOf(steps.slice(0, 1));
    value(await first.run((database) => database.put("first", { id: "kept" })));
    first.close();
    const newer = handleOf();
    const names = value(await newer.run(async (database) => [...database.objectStoreNames]));
    expect(names).toEqual(["first", "second"]);
    expect(value(await newer.run((database) => database.getAll("first")))).toEqual([
      { id: "kept" },
    ]);
  });

  it("of a newer version than this app's says so", async () => {
    const newer = handleOf();
    value(await newer.open());
    newer.close();
    expect(await handleOf(steps.slice(0, 1)).open()).toMatchObject({
      ok: false,
      fault: { code: "storeNewer" },
    });
  });

  it("that the browser does not have, or refuses, is told as refused", async () => {
    for (const none of [undefined, null]) {
      vi.stubGlobal("indexedDB", none);
      expect(await handleOf().open()).toMatchObject({ ok: false, fault: { code: "storeRefused" } });
    }
    const open = vi.fn(() => {
      throw closed();
    });
    vi.stubGlobal("indexedDB", { open });
    expect(await handleOf().open()).toMatchObject({ ok: false, fault: { code: "storeRefused" } });
    // A browser that refuses is not asked a second time.
    expect(open).toHaveBeenCalledTimes(1);
  });

  it("whose opening is broken off is opened once more, and no third time", async () => {
    const open = vi.fn(() => {
      throw closed("AbortError");
    });
    vi.stubGlobal("indexedDB", { open });
    expect(await handleOf().open()).toMatchObject({ ok: false, fault: { code: "storeFailed" } });
    expect(open).toHaveBeenCalledTimes(2);
  });

  it("that does not answer is given up on after eight seconds", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    vi.stubGlobal("indexedDB", { open: () => new IDBOpenDBRequest() });
    const ended = vi.fn();
    handleOf().open().then(ended);
    await vi.advanceTimersByTimeAsync(7999);
    expect(ended).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(ended.mock.calls).toMatchObject([[{ ok: false, fault: { code: "storeSilent" } }]]);
  });

  it("that another page does not let go of is told as blocked, and serves later all the same", async () => {
    // A page of an earlier version, which does not close its handle.
    const older = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open("shelf", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("first", { keyPath: "id" });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const handle = handleOf();
    expect(await handle.open()).toMatchObject({ ok: false, fault: { code: "storeBlocked" } });
    expect(handle.current).toBeNull();
    older.close();
    await vi.waitFor(() => expect(handle.current).not.toBeNull());
    expect(value(await handle.run((database) => database.getAll("second")))).toEqual([]);
  });

  it("is let go of where a newer version wants it, after those who listen were told", async () => {
    const handle = handleOf(steps.slice(0, 1));
    value(await handle.open());
    const [told, gone] = [vi.fn(() => handle.current), vi.fn()];
    handle.onClosing(told);
    handle.onClosing(gone)();
    value(await handleOf().open());
    expect(told).toHaveBeenCalledTimes(1);
    // It was still open then: what is begun there is carried out.
    expect(told.mock.results[0]?.value).not.toBeNull();
    expect(gone).not.toHaveBeenCalled();
    expect(handle.current).toBeNull();
  });
});

describe("work on a database", () => {
  it("is done once, and gives its value", async () => {
    const work = vi.fn(async () => 5);
    expect(value(await handleOf().run(work))).toBe(5);
    expect(work).toHaveBeenCalledTimes(1);
  });

  it("is repeated once on a handle that was closed, opened anew", async () => {
    const opens = vi.spyOn(indexedDB, "open");
    const handle = handleOf();
    const seen: unknown[] = [];
    const outcome = await handle.run(async (database) => {
      seen.push(database);
      if (seen.length === 1) throw closed();
      return "done";
    });
    expect(value(outcome)).toBe("done");
    expect(seen[0]).not.toBe(seen[1]);
    expect(opens).toHaveBeenCalledTimes(2);
  });

  it("is given up where it fails a second time, or by anything else at once", async () => {
    const twice = vi.fn(async () => {
      throw closed();
    });
    expect(await handleOf().run(twice)).toMatchObject({
      ok: false,
      fault: { code: "storeFailed" },
    });
    expect(twice).toHaveBeenCalledTimes(2);
    const full = vi.fn(async () => {
      throw closed("QuotaExceededError");
    });
    expect(await handleOf().run(full)).toMatchObject({ ok: false, fault: { code: "storeFull" } });
    expect(full).toHaveBeenCalledTimes(1);
  });

  it("is not begun where the database can't be opened", async () => {
    vi.stubGlobal("indexedDB", undefined);
    const work = vi.fn(async () => 5);
    expect(await handleOf().run(work)).toMatchObject({
      ok: false,
      fault: { code: "storeRefused" },
    });
    expect(work).not.toHaveBeenCalled();
  });
});
