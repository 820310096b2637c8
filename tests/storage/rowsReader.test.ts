import "fake-indexeddb/auto";
import { expect, it, vi } from "vitest";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

it("all that a screen lists is read from one look at the rows", async () => {
  const store = await tab();
  const [present, gone] = [newStoredCheck("Bay 1"), newStoredCheck("Bay 2")];
  for (const each of [present, gone]) value(await store.put(each));
  value(await store.remove(gone.id));
  const looks = vi.spyOn(IDBObjectStore.prototype, "getAll");
  const cursors = vi.spyOn(IDBObjectStore.prototype, "openCursor");
  const [here, deleted, aside] = await Promise.all([
    store.list(),
    store.list("deleted"),
    store.setAside(),
  ]);
  expect(value(here).map(({ id }) => id)).toEqual([present.id]);
  expect(value(deleted).map(({ id }) => id)).toEqual([gone.id]);
  expect(value(aside)).toEqual([]);
  expect([looks.mock.calls.length, cursors.mock.calls.length]).toEqual([1, 0]);
});

it("a look in a later turn has what was written in between", async () => {
  const store = await tab();
  const first = store.list();
  const stored = newStoredCheck("Bay 1");
  value(await store.put(stored));
  const later = value(await store.list());
  expect(later.map(({ id }) => id)).toEqual([stored.id]);
  expect(value(await first).length).toBeLessThanOrEqual(1);
});
