import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { engineFault } from "../../src/engine/engineFaults.ts";
import type { CheckParts } from "../../src/records/exchanged/checkMessages.ts";
import { outboxDatabaseName } from "../../src/storage/outboxDatabase.ts";
import { type OutboxStore, openOutbox } from "../../src/storage/outboxStore.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

const opened: OutboxStore[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function open(): Promise<OutboxStore> {
  const outbox = await openOutbox();
  if (!outbox.ok) throw new Error(outbox.fault.code);
  opened.push(outbox.value);
  return outbox.value;
}

function parts(name: string): CheckParts {
  const part = (kind: string) => ({ hash: `${name} ${kind}`, body: `${name} ${kind}` });
  return { readings: part("readings"), personal: part("personal"), photos: [part("photo")] };
}
const facts = { digest: "d1", whole: "w1" };

async function all(store: OutboxStore) {
  const waiting = await store.waiting(0, 100);
  return waiting.ok ? waiting.value : [];
}

async function stateOf(store: OutboxStore, checkId: string) {
  const sent = await store.sent();
  return sent.ok ? sent.value.get(checkId) : undefined;
}

describe("outbox", () => {
  it("holds a version whole, its readings last, over closing and opening", async () => {
    const first = await open();
    expect(await first.queue("c1", parts("one"), facts)).toMatchObject({ value: "queued" });
    first.close();
    const store = await open();
    expect((await all(store)).map(({ kind }) => kind)).toEqual(["photo", "personal", "readings"]);
    expect((await stateOf(store, "c1"))?.state).toBe("waiting");
  });

  it("the same version once more is no other", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    expect(await store.queue("c1", parts("one"), facts)).toMatchObject({ value: "present" });
    expect(await all(store)).toHaveLength(3);
  });

  it("is received only once every piece is acknowledged, and a piece counts once", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    const [photo, personal, readings] = await all(store);
    if (!photo || !personal || !readings) throw new Error("not queued");
    for (const part of [photo, photo, personal, photo]) {
      await store.acknowledged(part);
      expect((await stateOf(store, "c1"))?.state).toBe("waiting");
    }
    await store.acknowledged(readings);
    const sent = await stateOf(store, "c1");
    expect(sent?.state).toBe("received");
    expect(sent?.newest.receivedAt).toBeDefined();
    expect(await all(store)).toEqual([]);
  });

  it("a changed check is a version of its own; pieces out of order belong to the right one", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    await new Promise((resolve) => setTimeout(resolve, 2));
    await store.queue("c1", parts("two"), { digest: "d2", whole: "w2" });
    const waiting = await all(store);
    // The first version's photo is too large for the desk and stays.
    for (const part of waiting.slice(1)) await store.acknowledged(part);
    expect(await stateOf(store, "c1")).toMatchObject({
      state: "received",
      versions: 2,
      newest: { digest: "d2" },
    });
    expect((await all(store)).map(({ body }) => body)).toEqual(["one photo"]);
  });

  it("an answer counts for the version it came after", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    for (const part of await all(store)) await store.acknowledged(part);
    await new Promise((resolve) => setTimeout(resolve, 2));
    const at = new Date().toISOString();
    const reply = { id: "r1", checkId: "c1", text: "{}", at, seen: 0 as const };
    expect(await store.keepReply(reply)).toMatchObject({ value: true });
    expect(await store.keepReply(reply)).toMatchObject({ value: false });
    expect((await stateOf(store, "c1"))?.state).toBe("answered");
    await store.markSeen("r1");
    expect((await stateOf(store, "c1"))?.reply?.seen).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 2));
    await store.queue("c1", parts("two"), facts);
    expect((await stateOf(store, "c1"))?.state).toBe("waiting");
    for (const part of await all(store)) await store.acknowledged(part);
    expect((await stateOf(store, "c1"))?.state).toBe("received");
  });

  it("has the version that was given last as the newest, whatever its hash, received only whole", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-06-12T10:00:00.000Z") });
    const store = await open();
    for (const [minute, name] of ["two", "three", "one"].entries()) {
      vi.setSystemTime(new Date(Date.UTC(2026, 5, 12, 10, minute)));
      await store.queue("c1", parts(name), { digest: name, whole: name });
    }
    const pieces = (await all(store)).filter(({ body }) => body.startsWith("one"));
    for (const piece of pieces) {
      const newest = (await stateOf(store, "c1"))?.newest;
      expect([newest?.digest, newest?.receivedAt]).toEqual(["one", undefined]);
      await store.acknowledged(piece);
    }
    expect(await stateOf(store, "c1")).toMatchObject({
      state: "received",
      versions: 3,
      newest: {
        queuedAt: "2026-06-12T10:02:00.000Z",
        receivedAt: "2026-06-12T10:02:00.000Z",
        left: 0,
      },
    });
  });

  it("has the version that was given last as the newest also where the clock was set back", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-06-12T10:00:00.000Z") });
    const store = await open();
    await store.queue("c1", parts("one"), { digest: "one", whole: "one" });
    for (const part of await all(store)) await store.acknowledged(part);
    vi.setSystemTime(new Date("2026-06-12T09:00:00.000Z"));
    await store.queue("c1", parts("two"), { digest: "two", whole: "two" });
    await store.queue("c1", parts("three"), { digest: "three", whole: "three" });
    await store.queue("c2", parts("four"), { digest: "four", whole: "four" });
    expect(await stateOf(store, "c1")).toMatchObject({
      state: "waiting",
      newest: { digest: "three", queuedAt: "2026-06-12T10:00:00.002Z" },
    });
    expect((await stateOf(store, "c2"))?.newest.queuedAt).toBe("2026-06-12T09:00:00.000Z");
  });

  it("makes the phone's key once", async () => {
    const store = await open();
    const key = { publicKey: "U1", seed: "S1" };
    expect(await store.phoneKey(() => key)).toMatchObject({ value: key });
    expect(await store.phoneKey(() => ({ publicKey: "U2", seed: "S2" }))).toMatchObject({
      value: key,
    });
  });

  it("holds a version without names and photos as its readings alone", async () => {
    const store = await open();
    const { readings } = parts("one");
    await store.queue("c1", { readings, personal: null, photos: [] }, facts);
    expect(await all(store)).toEqual([
      {
        kind: "readings",
        checkId: "c1",
        hash: "one readings",
        body: "one readings",
        version: "one readings",
        place: 1,
      },
    ]);
    const sent = await stateOf(store, "c1");
    expect(sent).toMatchObject({ versions: 1, reply: null, newest: { left: 1, ...facts } });
    for (const part of await all(store)) await store.acknowledged(part);
    expect((await stateOf(store, "c1"))?.state).toBe("received");
  });

  it("gives its pieces in order, after one and as many as are asked for", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    const kinds = async (after?: number, most?: number) => {
      const waiting = await store.waiting(after, most);
      return waiting.ok ? waiting.value.map(({ kind }) => kind) : waiting.fault.code;
    };
    expect(await kinds()).toEqual(["photo"]);
    expect(await kinds(0, 2)).toEqual(["photo", "personal"]);
    expect(await kinds(1)).toEqual(["personal"]);
    expect(await kinds(1, 9)).toEqual(["personal", "readings"]);
    expect(await kinds(3)).toEqual([]);
  });

  it("notes that a reply was fetched, which is no version of a check", async () => {
    const store = await open();
    await store.queueFetched("c1", "r1", "fetched");
    const [note] = await all(store);
    expect(note).toEqual({ kind: "fetched", checkId: "c1", hash: "r1", body: "fetched", place: 1 });
    expect(await stateOf(store, "c1")).toBeUndefined();
    if (note) await store.acknowledged(note);
    expect(await all(store)).toEqual([]);
  });

  it("marks no reply as seen that is not here", async () => {
    const store = await open();
    expect(await store.markSeen("r9")).toEqual({ ok: true, value: null });
    await store.queue("c1", parts("one"), facts);
    expect((await stateOf(store, "c1"))?.reply).toBeNull();
  });

  it("has the newest reply of each check, whichever came in first", async () => {
    const store = await open();
    await store.queue("c1", parts("one"), facts);
    await store.queue("c2", parts("two"), facts);
    const reply = (id: string, checkId: string, at: string) =>
      store.keepReply({ id, checkId, text: "{}", at, seen: 0 });
    await reply("r1", "c1", "2099-01-02T00:00:00.000Z");
    await reply("r2", "c1", "2099-01-01T00:00:00.000Z");
    await reply("r3", "c2", "2001-01-01T00:00:00.000Z");
    for (const part of await all(store)) await store.acknowledged(part);
    expect(await stateOf(store, "c1")).toMatchObject({ state: "answered", reply: { id: "r1" } });
    // Of an earlier version than the one that was sent.
    expect(await stateOf(store, "c2")).toMatchObject({ state: "received", reply: { id: "r3" } });
  });

  it("keeps what holds it up in a sentence, until that is over", async () => {
    const store = await open();
    expect(await store.trouble()).toBeNull();
    const told = vi.fn();
    store.subscribe(told);
    const { sentence } = engineFault("deskFull");
    await store.noteTrouble(sentence);
    await store.noteTrouble(structuredClone(sentence));
    expect(told).toHaveBeenCalledTimes(1);
    expect(await (await open()).trouble()).toEqual(sentence);
    await store.noteTrouble(null);
    expect(await store.trouble()).toBeNull();
    expect(told).toHaveBeenCalledTimes(2);
  });

  it("gives what an earlier version kept of that in words", async () => {
    const store = await open();
    const database = await openDB(outboxDatabaseName);
    await database.put("settings", { key: "trouble", value: "The desk does not answer." });
    database.close();
    expect(await store.trouble()).toBe("The desk does not answer.");
  });

  it("tells of every change, here and on other pages, until nobody listens", async () => {
    const [store, other] = [await open(), await open()];
    const [here, there] = [vi.fn(), vi.fn()];
    const leave = store.subscribe(here);
    other.subscribe(there);
    await store.queue("c1", parts("one"), facts);
    expect(here).toHaveBeenCalledTimes(1);
    await vi.waitFor(() => expect(there).toHaveBeenCalledTimes(1));
    await store.queue("c1", parts("one"), facts);
    expect(here).toHaveBeenCalledTimes(1);
    const [photo] = await all(store);
    if (photo) await store.acknowledged(photo);
    expect(here).toHaveBeenCalledTimes(2);
    const reply = { id: "r1", checkId: "c1", text: "{}", at: "2026-06-12", seen: 0 as const };
    await store.keepReply(reply);
    await store.keepReply(reply);
    expect(here).toHaveBeenCalledTimes(3);
    await store.markSeen("r1");
    expect(here).toHaveBeenCalledTimes(4);
    leave();
    await store.markSeen("r1");
    expect(here).toHaveBeenCalledTimes(4);
    await vi.waitFor(() => expect(there).toHaveBeenCalledTimes(5));
  });

  it("works where pages can't tell each other", async () => {
    vi.stubGlobal("BroadcastChannel", undefined);
    const store = await open();
    const told = vi.fn();
    store.subscribe(told);
    await store.queue("c1", parts("one"), facts);
    expect(told).toHaveBeenCalledTimes(1);
    expect(() => store.close()).not.toThrow();
  });

  it("that can't be opened says why", async () => {
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new DOMException("denied", "SecurityError");
      },
    });
    expect(await openOutbox()).toMatchObject({ ok: false, fault: { code: "storeRefused" } });
  });
});
