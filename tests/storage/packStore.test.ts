import { inModelUnits } from "../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { packItemHref } from "../../src/screens/pack/packRoutes.ts";
import { openCheckStore } from "../../src/storage/checkStore.ts";
import type { ShippedOrigin } from "../../src/storage/database.ts";
import { openPackStore } from "../../src/storage/packStore.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

afterEach(() => vi.unstubAllGlobals());

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
  const checks = await openCheckStore(inModelUnits);
  const list = checks.ok ? await checks.value.list() : checks;
  expect(list.ok && list.value.map(({ name }) => name)).toEqual(["Old check"]);
  packs.close();
  if (checks.ok) checks.value.close();
});

it.each([
  [
    "SecurityError",
    "storeRefused",
    "this browser refuses to store anything here, as in a private window",
  ],
  ["QuotaExceededError", "storeFull", "the storage of this phone is full"],
  [
    "VersionError",
    "storeNewer",
    "a newer version of Stopfit has been used on this phone. Load this page again",
  ],
  ["TimeoutError", "storeSilent", "the storage of this phone does not answer"],
  ["DataError", "storeFailed", "the storage of this phone reported a fault"],
])(
  "says in a sentence that nothing was kept where the storage ends in %s",
  async (name, code, why) => {
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new DOMException("denied", name);
      },
    });
    const store = openPackStore();
    for (const outcome of [await store.put(demoPack, 0), await store.get()]) {
      expect(outcome.ok ? "" : outcome.fault.code).toBe(code);
      expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toBe(
        `The library is not saved: ${why}. Save it as a file before you close this page.`,
      );
    }
    store.close();
  },
);

it("remembers that it is the one that ships, and that it was edited since", async () => {
  const store = openPackStore();
  const shipped: ShippedOrigin = { digest: "d1", edited: false };
  const first = await store.put(renamed("Shipped"), 0, shipped);
  expect(first.ok && first.value.stored?.shipped).toEqual(shipped);
  const edited = await store.put(renamed("Edited"), 1);
  expect(edited.ok && edited.value.stored?.shipped).toEqual({ ...shipped, edited: true });
  const found = await store.get();
  expect(found.ok && found.value?.shipped).toEqual({ ...shipped, edited: true });
  store.close();
});

it("one that was opened here has no origin, and says when it was kept", async () => {
  const store = openPackStore();
  const before = new Date().toISOString();
  const kept = await store.put(renamed("Own"), 0);
  const stored = kept.ok ? kept.value.stored : null;
  expect(stored && "shipped" in stored).toBe(false);
  expect((stored?.keptAt ?? "") >= before).toBe(true);
  store.close();
});

it("nothing is written over where another tab kept the first one", async () => {
  const store = openPackStore();
  expect(await store.put(renamed("Late"), 3)).toEqual({
    ok: true,
    value: { kind: "changedElsewhere", stored: null },
  });
  expect(await store.get()).toEqual({ ok: true, value: null });
  store.close();
});

it("tells nobody who listens no more, and works where tabs can't tell each other", async () => {
  const [one, other] = [openPackStore(), openPackStore()];
  const [gone, stays] = [vi.fn(), vi.fn()];
  other.subscribe(gone)();
  other.subscribe(stays);
  await one.put(renamed("First"), 0);
  await vi.waitFor(() => expect(stays).toHaveBeenCalledTimes(1));
  expect(gone).not.toHaveBeenCalled();
  // What was not kept is nothing to tell.
  await one.put(renamed("Late"), 0);
  await one.put(renamed("Second"), 1);
  await vi.waitFor(() => expect(stays).toHaveBeenCalledTimes(2));
  one.close();
  other.close();
  vi.stubGlobal("BroadcastChannel", undefined);
  const alone = openPackStore();
  expect((await alone.put(renamed("Third"), 2)).ok).toBe(true);
  expect(() => alone.close()).not.toThrow();
});
