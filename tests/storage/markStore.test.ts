import "fake-indexeddb/auto";
import { afterEach, describe, expect, it, vi } from "vitest";
import { listedCheck } from "../../src/records/check/listedCheck.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { contentDigest, MarkStore } from "../../src/storage/markStore.ts";
import { tinyPhoto } from "../support/pictures.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();
afterEach(() => vi.useRealTimers());

const now = new Date("2026-06-12T10:00:00.000Z");
const open = (name?: string) => closedLater(new MarkStore(name));
const [one, two] = [newStoredCheck("one"), newStoredCheck("two")];

describe("what a phone remembers of its keeping", () => {
  it("is nothing at first", async () => {
    expect(value(await open().safekeeping())).toEqual({
      lastBackupAt: null,
      safe: new Map(),
      askedAt: null,
    });
  });

  it("is which checks were saved or sent, as they were then, and when it asked", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now });
    const marks = open();
    expect(value(await marks.markSafe([one]))).toBeNull();
    expect(value(await marks.markAsked())).toBeNull();
    expect(value(await open().safekeeping())).toEqual({
      lastBackupAt: null,
      safe: new Map([[one.id, contentDigest(one)]]),
      askedAt: now.toISOString(),
    });
    await marks.markSafe([{ ...one, name: "changed" }]);
    const { safe } = value(await marks.safekeeping());
    expect(safe.get(one.id)).toBe(contentDigest({ ...one, name: "changed" }));
    expect(safe.get(one.id)).not.toBe(contentDigest(one));
  });

  it("is the last backup, with the marks of what was in it alone", async () => {
    const marks = open();
    const phone = value(await marks.phone());
    await marks.markBackup("2026-05-01T08:00:00.000Z", []);
    expect(value(await marks.safekeeping())).toEqual({
      lastBackupAt: "2026-05-01T08:00:00.000Z",
      safe: new Map(),
      askedAt: null,
    });
    await marks.markSafe([one]);
    await marks.markAsked();
    expect(value(await marks.markBackup("2026-06-01T08:00:00.000Z", [two]))).toBeNull();
    const kept = value(await marks.safekeeping());
    expect(kept.lastBackupAt).toBe("2026-06-01T08:00:00.000Z");
    expect([...kept.safe]).toEqual([[two.id, contentDigest(two)]]);
    expect(kept.askedAt).not.toBeNull();
    expect(value(await marks.phone())).toBe(phone);
  });

  it("is its own name, the same for ever, and another database's is another", async () => {
    const phone = value(await open().phone());
    expect(phone).toMatch(/^[0-9a-f-]{36}$/);
    expect(value(await open().phone())).toBe(phone);
    expect(value(await open("elsewhere").phone())).not.toBe(phone);
  });

  it("is a fault where the browser stores nothing", async () => {
    vi.stubGlobal("indexedDB", undefined);
    const marks = open();
    expect((await marks.safekeeping()).ok).toBe(false);
    expect((await marks.markAsked()).ok).toBe(false);
    expect((await marks.phone()).ok).toBe(false);
  });
});

describe("the digest of a check's content", () => {
  const digest = contentDigest(one);
  const photos = [tinyPhoto];

  it("is the same however far one is in it, and whichever version writes it", () => {
    const progress = { ...one.progress, step: "gap" };
    expect(contentDigest({ ...one, progress, revision: 5, updatedAt: "" })).toBe(digest);
    const record = { ...one.record, version: 1 } as unknown as typeof one.record;
    expect(contentDigest({ ...one, record })).toBe(digest);
  });

  it("is another with another name, reading, entry, photo, or something waiting beside", () => {
    const changed = [
      { ...one, name: "other" },
      { ...one, record: { ...one.record, notes: "a" } },
      { ...one, entries: { a: { texts: ["1"], unit: "mm" as const, tol: "" } } },
      { ...one, record: { ...one.record, photos } },
      { ...one, record: { ...one.record, photos: [{ ...tinyPhoto, caption: "Left" }] } },
      { ...one, aside: {} },
      { ...one, aside: { handStop: { name: "Tall" } } },
      { ...one, name: "other", aside: {} },
    ];
    expect(new Set([digest, ...changed.map(contentDigest)]).size).toBe(changed.length + 1);
  });

  it("is the same for a check as the list has it, without its pictures", () => {
    const whole = { ...one, record: { ...one.record, photos } };
    expect(contentDigest(listedCheck(whole))).toBe(contentDigest(whole));
  });
});
