import "fake-indexeddb/auto";
import { expect, it, vi } from "vitest";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { DatabaseHandle } from "../../src/storage/database.ts";
import { RowsReader } from "../../src/storage/rowsReader.ts";
import { closedLater, freshBrowsers, tab, value } from "./support/tabs.ts";

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

it("a row that can't be shown is set aside by its key, and hides none of the others", async () => {
  const handle = closedLater(new DatabaseHandle());
  const stored = newStoredCheck("Bay 1");
  value(await (await tab()).put(stored));
  const damaged = { id: 7, name: "Brant", record: {} };
  value(await handle.run((database) => database.put("checks", damaged as never)));
  const { listed, aside } = value(await new RowsReader(handle).read());
  expect(listed.map(({ id }) => id)).toEqual([stored.id]);
  expect(aside.map(({ key }) => key)).toEqual([7]);
});
