import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { CheckParts } from "../../src/records/exchanged/checkMessages.ts";
import { type OutboxStore, openOutbox } from "../../src/storage/outboxStore.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

async function open(): Promise<OutboxStore> {
  const opened = await openOutbox();
  if (!opened.ok) throw new Error(opened.fault.code);
  return opened.value;
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

  it("makes the phone's key once", async () => {
    const store = await open();
    const key = { publicKey: "U1", seed: "S1" };
    expect(await store.phoneKey(() => key)).toMatchObject({ value: key });
    expect(await store.phoneKey(() => ({ publicKey: "U2", seed: "S2" }))).toMatchObject({
      value: key,
    });
  });
});
