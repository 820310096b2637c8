import { afterEach, describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import type { CheckStore } from "../../src/storage/checkStore.ts";
import { storeFault } from "../../src/storage/storeFault.ts";
import { withoutStorage } from "../../src/storage/withoutStorage.ts";
import { value } from "./support/tabs.ts";

const fault = storeFault("storeRefused");
const notKept = { ok: false, fault };
const stores: CheckStore[] = [];
afterEach(() => {
  for (const store of stores.splice(0)) store.close();
});
function open(): CheckStore {
  const store = withoutStorage(fault);
  stores.push(store);
  return store;
}

const at = (name: string, day: number): StoredCheck => ({
  ...newStoredCheck(name),
  updatedAt: `2026-05-0${day}T10:00:00.000Z`,
});

/** Does the browser ask before this page is closed? */
function asksBeforeLeaving(): boolean {
  const event = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(event);
  return event.defaultPrevented;
}

const names = async (store: CheckStore, which?: "present" | "deleted") =>
  value(await store.list(which)).map(({ name }) => name);

describe("checks where the browser keeps nothing", () => {
  it("are there while the page is, newest first, and never called kept", async () => {
    const store = open();
    const [one, two] = [at("one", 1), at("two", 2)];
    expect(asksBeforeLeaving()).toBe(false);
    expect(await store.put(one)).toEqual(notKept);
    expect(await store.put(two)).toEqual(notKept);
    expect(await names(store)).toEqual(["two", "one"]);
    expect(value(await store.get(one.id))).toEqual(one);
    expect(value(await store.get("elsewhere"))).toBeNull();
    expect(store.unkept().map(({ name }) => name)).toEqual(["one", "two"]);
  });

  it("have the browser ask before the page is closed, until the store is", async () => {
    const [store, other] = [open(), open()];
    await store.put(at("one", 1));
    await other.put(at("two", 1));
    store.close();
    expect(asksBeforeLeaving()).toBe(true);
    other.close();
    expect(asksBeforeLeaving()).toBe(false);
  });

  it("are added once", async () => {
    const store = open();
    const one = at("one", 1);
    expect(value(await store.add(one))).toBe(true);
    expect(value(await store.add({ ...one, name: "again" }))).toBe(false);
    expect(await names(store)).toEqual(["one"]);
  });

  it("are changed, copied, deleted and brought back", async () => {
    const store = open();
    const one = at("one", 1);
    await store.add(one);
    await store.update(one.id, (stored) => ({ ...stored, name: "changed" }));
    expect(await names(store)).toEqual(["changed"]);
    const copied = value(await store.copy(one.id, "copy"));
    expect(copied.id).not.toBe(one.id);
    expect((await names(store)).sort()).toEqual(["changed", "copy"]);
    await store.remove(one.id);
    expect(await names(store)).toEqual(["copy"]);
    expect(await names(store, "deleted")).toEqual(["changed"]);
    expect(store.unkept().map(({ name }) => name)).toEqual(["copy"]);
    await store.restore(one.id);
    expect(await names(store, "deleted")).toEqual([]);
    expect((await names(store)).sort()).toEqual(["changed", "copy"]);
    store.putAway(at("left", 3));
    expect(await names(store)).toContain("left");
  });

  it("that are not there can't be changed, copied, deleted or brought back", async () => {
    const store = open();
    expect(await store.update("elsewhere", (stored) => stored)).toEqual(notKept);
    expect(await store.copy("elsewhere", "copy")).toEqual(notKept);
    expect(await store.remove("elsewhere")).toEqual(notKept);
    expect(await store.restore("elsewhere")).toEqual(notKept);
    expect(await names(store)).toEqual([]);
  });

  it("have nothing set aside, and take in no backup", async () => {
    const store = open();
    expect(value(await store.setAside())).toEqual([]);
    expect(await store.rowText("1")).toEqual(notKept);
    expect(await store.discard("1")).toEqual(notKept);
    expect(await store.takeIn(at("one", 1), (current) => current)).toEqual(notKept);
    expect(value(await store.purge(new Date()))).toBe(0);
    expect(() => store.subscribe(() => undefined)()).not.toThrow();
    expect(() => store.onClosing(() => undefined)()).not.toThrow();
  });
});
