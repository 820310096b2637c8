import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import type { StoredReply } from "../../src/storage/deskDatabase.ts";
import { ReplyStore } from "../../src/storage/replyStore.ts";
import { reply } from "../support/sampleReply.ts";
import { freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const kept = (id: string, more: Partial<StoredReply> = {}): StoredReply => ({
  id,
  storedId: "check",
  reply: { ...reply, id },
  before: {},
  same: [],
  closed: 0,
  keptAt: "2026-05-04T10:00:00.000Z",
  ...more,
});

async function withStore<Value>(work: (store: ReplyStore) => Promise<Value>): Promise<Value> {
  const store = new ReplyStore();
  try {
    return await work(store);
  } finally {
    store.dispose();
  }
}

describe("replies that reached this phone", () => {
  it("are none until one is kept, and each is of its own check", async () => {
    await withStore(async (store) => {
      expect(value(await store.openFor("check"))).toBeNull();
      expect(value(await store.add(kept("r1")))).toEqual(kept("r1"));
      expect(value(await store.openFor("check"))).toEqual(kept("r1"));
      expect(value(await store.openFor("another"))).toBeNull();
    });
    await withStore(async (store) => {
      expect(value(await store.openFor("check"))?.id).toBe("r1");
    });
  });

  it("that were opened before stay as they are", async () => {
    await withStore(async (store) => {
      await store.add(kept("r1"));
      await store.markSame("r1", "left.gap");
      const again = value(await store.add(kept("r1", { storedId: "another" })));
      expect([again.storedId, again.same]).toEqual(["check", ["left.gap"]]);
    });
  });

  it("stand by when this phone kept them, whatever date their senders chose", async () => {
    await withStore(async (store) => {
      const future = { ...reply, id: "r1", createdAt: "2099-01-01T00:00:00.000Z" };
      await store.add(kept("r1", { reply: future, keptAt: "2026-05-04T09:00:00.000Z" }));
      await store.add(kept("r2"));
      await store.add(kept("r3", { keptAt: "2026-05-04T08:00:00.000Z" }));
      expect(value(await store.openFor("check"))?.id).toBe("r2");
      // Those that were kept before there was such a date come last, by their own.
      const { keptAt: _, ...old } = kept("r0");
      await store.add(old);
      expect(value(await store.openFor("check"))?.id).toBe("r2");
    });
  });

  it("that are closed make room for the one before, and stay kept", async () => {
    await withStore(async (store) => {
      await store.add(kept("r1", { keptAt: "2026-05-03T10:00:00.000Z" }));
      await store.add(kept("r2"));
      expect(value(await store.close("r2"))).toBeNull();
      expect(value(await store.openFor("check"))?.id).toBe("r1");
      await store.close("r1");
      expect(value(await store.openFor("check"))).toBeNull();
      expect(value(await store.add(kept("r1"))).closed).toBe(1);
    });
  });

  it("remember each reading once that is to stay the same", async () => {
    await withStore(async (store) => {
      await store.add(kept("r1"));
      for (const reading of ["left.gap", "right.gap", "left.gap"]) {
        expect(value(await store.markSame("r1", reading))).toBeNull();
      }
      expect(value(await store.openFor("check"))?.same).toEqual(["left.gap", "right.gap"]);
    });
  });

  it("that are not here can't be changed, and none appears", async () => {
    await withStore(async (store) => {
      expect(value(await store.close("r9"))).toBeNull();
      expect(value(await store.markSame("r9", "left.gap"))).toBeNull();
      expect(value(await store.openFor("check"))).toBeNull();
    });
  });

  it("are a fault where the browser stores nothing", async () => {
    vi.stubGlobal("indexedDB", undefined);
    await withStore(async (store) => {
      expect((await store.openFor("check")).ok).toBe(false);
      expect((await store.add(kept("r1"))).ok).toBe(false);
    });
  });
});
