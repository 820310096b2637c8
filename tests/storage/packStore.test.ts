import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, expect, it, vi } from "vitest";
import { inModelUnits } from "../../src/physics/sentence.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { packItemHref } from "../../src/screens/pack/packRoutes.ts";
import { openCheckStore } from "../../src/storage/checkStore.ts";
import { openPackStore } from "../../src/storage/packStore.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

const renamed = (name: string) => ({ ...demoPack, name });

it("no pack until one is kept; then that one, as it was handed in", async () => {
  const store = openPackStore();
  expect(await store.get()).toEqual({ ok: true, value: null });
  const kept = await store.put(renamed("First"), 0);
  expect(kept.ok && kept.value.kind).toBe("kept");
  const found = await store.get();
  expect(found.ok && found.value?.pack).toEqual(renamed("First"));
  expect(found.ok && found.value?.revision).toBe(1);
  store.close();
});

it("texts that no address can hold heal as it is read", async () => {
  const store = openPackStore();
  const [stop] = demoPack.stops;
  if (stop === undefined) throw new Error("no stop");
  const broken = { ...demoPack, stops: [{ ...stop, id: "\ud800", name: "Tall \u202emrif" }] };
  await store.put(broken, 0);
  const found = await store.get();
  const healed = found.ok ? found.value?.pack.stops[0] : undefined;
  expect([healed?.id, healed?.name]).toEqual(["\ufffd", "Tall mrif"]);
  expect(packItemHref("stop", healed?.id ?? "")).toBe("#/pack/stop/%EF%BF%BD");
  store.close();
});

it("a pack changed by another tab is not written over", async () => {
  const one = openPackStore();
  const other = openPackStore();
  await one.put(renamed("First"), 0);
  await other.put(renamed("By the other tab"), 1);
  const late = await one.put(renamed("Late"), 1);
  expect(late.ok && late.value.kind).toBe("changedElsewhere");
  expect(late.ok && late.value.stored?.pack.name).toBe("By the other tab");
  const found = await one.get();
  expect(found.ok && found.value?.pack.name).toBe("By the other tab");
  one.close();
  other.close();
});

it("tells other tabs that a pack was kept", async () => {
  const one = openPackStore();
  const other = openPackStore();
  const told = new Promise<void>((done) => other.subscribe(done));
  await one.put(renamed("First"), 0);
  await told;
  one.close();
  other.close();
});

it("checks kept by the version before stay as they are", async () => {
  await new Promise<void>((done, failed) => {
    const opening = indexedDB.open("stopfit", 1);
    opening.onupgradeneeded = () => {
      const checks = opening.result.createObjectStore("checks", { keyPath: "id" });
      checks.createIndex("updatedAt", "updatedAt");
      opening.result.createObjectStore("unjoined", { keyPath: "key" });
      checks.put({ id: "old", name: "Old check", updatedAt: "2026-01-01T00:00:00Z" });
    };
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      opening.result.close();
      done();
    };
  });
  const packs = openPackStore();
  expect((await packs.put(renamed("First"), 0)).ok).toBe(true);
  const checks = await openCheckStore();
  const list = checks.ok ? await checks.value.list() : checks;
  expect(list.ok && list.value.map(({ name }) => name)).toEqual(["Old check"]);
  packs.close();
  if (checks.ok) checks.value.close();
});

it("says in a sentence that nothing was kept where the browser refuses", async () => {
  vi.stubGlobal("indexedDB", {
    open: () => {
      throw new DOMException("denied", "SecurityError");
    },
  });
  const outcome = await openPackStore().put(demoPack, 0);
  expect(outcome.ok).toBe(false);
  expect(!outcome.ok && inModelUnits(outcome.fault.sentence)).toMatch(
    /^The library is not saved: this browser refuses.*Save it as a file/,
  );
});
