import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { SchemaHandle } from "../../src/storage/databaseHandle.ts";
import {
  type DeskSchema,
  deskDatabaseName,
  deskMigrations,
  type InboxEntry,
  writeDesk,
} from "../../src/storage/deskDatabase.ts";
import { DeskInbox, nextMoment, nothingCounted, takeOut } from "../../src/storage/deskInbox.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const openHandle = () =>
  closedLater(new SchemaHandle<DeskSchema>(deskDatabaseName, deskMigrations));
const entry = (importKey: string, place: number, text: string | Blob = "{}"): InboxEntry => ({
  importKey,
  place,
  name: `file ${place}`,
  what: `The file ${place}`,
  way: "file",
  text,
});

describe("an import's inbox", () => {
  it("begins empty, and is known until it is ended", async () => {
    const inbox = new DeskInbox(openHandle());
    expect(value(await inbox.begun())).toEqual([]);
    const begun = value(await inbox.begin());
    expect(begun).toMatchObject({ stage: "reading", total: 0, counts: nothingCounted });
    expect(nothingCounted).toEqual({
      taken: 0,
      added: 0,
      present: 0,
      refusedCount: 0,
      refused: [],
    });
    expect(begun.startedAt).toBe(new Date(begun.startedAt).toISOString());
    const other = value(await inbox.begin());
    expect(other.key).not.toBe(begun.key);
    const noted = { ...begun, stage: "taking" as const, total: 3 };
    expect(value(await inbox.note(noted))).toBeNull();
    const known = value(await new DeskInbox(openHandle()).begun());
    expect(known.find(({ key }) => key === begun.key)).toEqual(noted);
    expect(value(await inbox.end(begun.key))).toBeNull();
    expect(value(await inbox.begun())).toEqual([other]);
  });

  it("gives the entries of one import in their order, as many as are asked for", async () => {
    const inbox = new DeskInbox(openHandle());
    expect(
      value(await inbox.put([entry("b", 1), entry("a", 3), entry("a", 0), entry("a", 12)])),
    ).toBeNull();
    const places = async (key: string, most: number) =>
      value(await inbox.next(key, most)).map(({ place }) => place);
    expect(await places("a", 1)).toEqual([0]);
    expect(await places("a", 2)).toEqual([0, 3]);
    expect(await places("a", 9)).toEqual([0, 3, 12]);
    expect(await places("b", 9)).toEqual([1]);
    expect(await places("c", 9)).toEqual([]);
    expect(value(await inbox.next("b", 1))).toEqual([entry("b", 1)]);
  });

  it("gives no more at once than memory should hold, to the letter", async () => {
    const inbox = new DeskInbox(openHandle());
    const places = async () => value(await inbox.next("a", 9)).map(({ place }) => place);
    await inbox.put([entry("a", 1, "x".repeat(3_999_999)), entry("a", 2, ""), entry("a", 3)]);
    expect(await places()).toEqual([1, 2, 3]);
    await inbox.put([entry("a", 1, "x".repeat(4_000_000))]);
    expect(await places()).toEqual([1]);
    // An entry of an earlier version, whose text stands elsewhere.
    const { text: _, ...without } = entry("a", 1);
    await inbox.put([without]);
    expect(await places()).toEqual([1, 2, 3]);
  });

  it("loses those that were taken in, and keeps how far it is", async () => {
    const handle = openHandle();
    const inbox = new DeskInbox(handle);
    const begun = value(await inbox.begin());
    await inbox.put([1, 2, 3].map((place) => entry(begun.key, place)));
    const counted = { ...begun, counts: { ...nothingCounted, taken: 2, added: 2 } };
    value(await writeDesk(handle, (transaction) => takeOut(transaction, counted, [1, 3])));
    expect(value(await inbox.next(begun.key, 9)).map(({ place }) => place)).toEqual([2]);
    expect(value(await inbox.begun())).toEqual([counted]);
  });

  it("that is ended drops what was left of it, and nothing of another", async () => {
    const inbox = new DeskInbox(openHandle());
    const begun = value(await inbox.begin());
    await inbox.put([entry(begun.key, 0), entry(begun.key, 7), entry("other", 0)]);
    await inbox.end(begun.key);
    expect(value(await inbox.next(begun.key, 9))).toEqual([]);
    expect(value(await inbox.next("other", 9))).toHaveLength(1);
  });
});

describe("a write to the desk", () => {
  it("is all or nothing", async () => {
    const handle = openHandle();
    const inbox = new DeskInbox(handle);
    const broken = await writeDesk(handle, async (transaction) => {
      await transaction.objectStore("inbox").put(entry("a", 1));
      throw new DOMException("full", "QuotaExceededError");
    });
    expect(broken).toMatchObject({ ok: false, fault: { code: "storeFull" } });
    expect(value(await inbox.next("a", 9))).toEqual([]);
    expect(value(await writeDesk(handle, async () => 5))).toBe(5);
  });
});

describe("moments", () => {
  it("each come after the one before, however quickly they are asked for", () => {
    const moments = Array.from({ length: 50 }, nextMoment);
    expect([...new Set(moments)].sort()).toEqual(moments);
  });
});
