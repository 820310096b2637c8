import "fake-indexeddb/auto";
import { IDBObjectStore } from "fake-indexeddb";
import { describe, expect, it, vi } from "vitest";
import type { Photo } from "../../src/records/check/checkRecord.ts";
import { listedCheck } from "../../src/records/check/listedCheck.ts";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { rowOf, rowSetAside } from "../../src/storage/checkRow.ts";
import { DatabaseHandle } from "../../src/storage/database.ts";
import { contentDigest } from "../../src/storage/markStore.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import { closedLater, freshBrowsers, tab, value } from "./support/tabs.ts";

// The pictures of photos stand apart from the rows of their checks.

freshBrowsers();

const photo = (data: string, reading = "left.gap"): Photo => ({
  type: "image/jpeg",
  data,
  reading,
  caption: `Of ${data}`,
});

const withPhotos = (stored: StoredCheck, ...photos: Photo[]): StoredCheck =>
  changeRecord(stored, (record) => ({ ...record, photos }));

const typed = (stored: StoredCheck, text: string): StoredCheck =>
  setEntry(stored, "left.gap", { texts: [text], unit: "mm", tol: "1" });

const pictures = async (): Promise<string[]> =>
  ((await rowsOf("stopfit", "pictures")) as { data: string }[]).map(({ data }) => data).sort();

/** What is asked of the store of pictures from here on. */
function watchPictures(): string[] {
  const asked: string[] = [];
  for (const name of ["put", "get"] as const) {
    const original = IDBObjectStore.prototype[name];
    vi.spyOn(IDBObjectStore.prototype, name).mockImplementation(function (
      this: IDBObjectStore,
      ...given: unknown[]
    ) {
      if (this.name === "pictures") asked.push(name);
      return (original as (...args: unknown[]) => IDBRequest).apply(this, given) as never;
    });
  }
  return asked;
}

describe("a check with photos", () => {
  it("is given back whole, and listed without its pictures", async () => {
    const store = await tab();
    const stored = withPhotos(
      newStoredCheck("Tern"),
      photo("AAAA"),
      photo("BBBBBB", "left.rideHeight"),
    );
    value(await store.put(stored));
    const again = await tab();
    expect(value(await again.get(stored.id))?.record.photos).toEqual(stored.record.photos);
    const [listed] = value(await again.list());
    expect(listed?.record.photos).toEqual([
      { type: "image/jpeg", reading: "left.gap", caption: "Of AAAA", length: 4 },
      { type: "image/jpeg", reading: "left.rideHeight", caption: "Of BBBBBB", length: 6 },
    ]);
    expect(JSON.stringify(await rowsOf("stopfit", "checks"))).not.toContain('"BBBBBB"');
    expect(await pictures()).toEqual(["AAAA", "BBBBBB"]);
  });

  it("is typed into without a picture being written or read again", async () => {
    const first = await tab();
    const stored = withPhotos(newStoredCheck("Tern"), photo("AAAA"), photo("BBBB"));
    let here = value(await first.put(stored));
    const asked = watchPictures();
    for (const text of ["2", "21", "21.5"]) here = value(await first.put(typed(here, text)));
    expect(asked).toEqual([]);
    const second = await tab();
    let there = value(await second.get(stored.id)) as StoredCheck;
    expect(asked).toEqual(["get", "get"]);
    for (const text of ["3", "34"]) there = value(await second.put(typed(there, text)));
    expect(asked).toEqual(["get", "get"]);
    const whole = value(await (await tab()).get(stored.id));
    expect(whole?.record.photos).toEqual(stored.record.photos);
    expect(whole?.entries["left.gap"]?.texts).toEqual(["34"]);
  });

  it("is known by the same digest with and without its pictures", () => {
    const stored = withPhotos(newStoredCheck("Tern"), photo("AAAA"));
    expect(contentDigest(listedCheck(stored))).toBe(contentDigest(stored));
    const longer = withPhotos(stored, photo("AAAAA"));
    expect(contentDigest(listedCheck(longer))).not.toBe(contentDigest(stored));
    const bare = newStoredCheck("Tern");
    expect(listedCheck(bare)).toBe(bare);
  });

  it("loses the picture of a photo that is taken out, and only that", async () => {
    const store = await tab();
    const stored = withPhotos(newStoredCheck("Tern"), photo("AAAA"), photo("BBBB"));
    const other = withPhotos(newStoredCheck("Brant"), photo("CCCC"));
    const kept = value(await store.put(stored));
    value(await store.put(other));
    const left = kept.record.photos?.filter(({ data }) => data !== "AAAA") ?? [];
    value(await store.put(withPhotos(kept, ...left)));
    expect(await pictures()).toEqual(["BBBB", "CCCC"]);
    expect(value(await store.get(stored.id))?.record.photos).toEqual([photo("BBBB")]);
    const { photos: _, ...bare } = stored.record;
    const again = value(await store.get(stored.id)) as StoredCheck;
    value(await store.put({ ...again, record: bare }));
    expect(await pictures()).toEqual(["CCCC"]);
  });

  it("keeps the photos that two tabs took at the same time", async () => {
    const [one, two] = [await tab(), await tab()];
    const stored = value(await one.put(withPhotos(newStoredCheck("Tern"), photo("AAAA"))));
    const seenByTwo = value(await two.get(stored.id)) as StoredCheck;
    value(await one.put(withPhotos(stored, photo("AAAA"), photo("BBBB"))));
    value(await two.put(withPhotos(seenByTwo, photo("AAAA"), photo("CCCC", "right.gap"))));
    const whole = value(await one.get(stored.id));
    expect(whole?.record.photos?.map(({ data }) => data).sort()).toEqual(["AAAA", "BBBB", "CCCC"]);
    expect(await pictures()).toEqual(["AAAA", "BBBB", "CCCC"]);
  });

  it("may show one picture with two readings", async () => {
    const store = await tab();
    const one = photo("AAAA");
    const stored = withPhotos(newStoredCheck("Tern"), one, { ...one, reading: "right.gap" }, one);
    value(await store.put(stored));
    const whole = value(await (await tab()).get(stored.id));
    expect(whole?.record.photos).toEqual(stored.record.photos);
  });

  it("is copied, renamed, deleted and restored with its pictures, and purged with them", async () => {
    const store = await tab();
    const stored = withPhotos(newStoredCheck("Tern"), photo("AAAA"));
    value(await store.put(stored));
    const copied = value(await store.copy(stored.id, "Tern (copy)"));
    value(await store.update(stored.id, (check) => ({ ...check, name: "Tern, rear" })));
    value(await store.remove(stored.id));
    expect(value(await store.list("deleted"))[0]?.record.photos?.[0]?.length).toBe(4);
    value(await store.restore(stored.id));
    for (const id of [stored.id, copied.id]) {
      expect(value(await store.get(id))?.record.photos).toEqual([photo("AAAA")]);
    }
    expect(await pictures()).toEqual(["AAAA", "AAAA"]);
    value(await store.remove(stored.id));
    expect(value(await store.purge(new Date(Date.now() + 1000)))).toBe(1);
    expect(await pictures()).toEqual(["AAAA"]);
    expect(value(await (await tab()).get(copied.id))?.record.photos).toEqual([photo("AAAA")]);
  });

  it("is put away whole as the page goes, and joined in at the next opening", async () => {
    const store = await tab();
    const stored = value(await store.put(withPhotos(newStoredCheck("Tern"), photo("AAAA"))));
    store.putAway(typed(withPhotos(stored, photo("AAAA"), photo("BBBB")), "21"));
    const again = await tab();
    const whole = value(await again.get(stored.id));
    expect(whole?.record.photos).toEqual([photo("AAAA"), photo("BBBB")]);
    expect(whole?.entries["left.gap"]?.texts).toEqual(["21"]);
    expect(await pictures()).toEqual(["AAAA", "BBBB"]);
  });

  it("is as it was where the write of a new picture fails", async () => {
    const store = await tab();
    const stored = value(await store.put(withPhotos(newStoredCheck("Tern"), photo("AAAA"))));
    const original = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (
      this: IDBObjectStore,
      ...given: Parameters<IDBObjectStore["put"]>
    ) {
      if (this.name === "pictures") throw new DOMException("full", "QuotaExceededError");
      return original.apply(this, given);
    });
    const more = typed(withPhotos(stored, photo("AAAA"), photo("BBBB")), "21");
    const outcome = await store.put(more);
    expect(outcome.ok ? "kept" : outcome.fault.code).toBe("storeFull");
    expect(await pictures()).toEqual(["AAAA"]);
    const stillThere = value(await (await tab()).get(stored.id));
    expect(stillThere?.record.photos).toEqual([photo("AAAA")]);
    expect(stillThere?.entries["left.gap"]).toBeUndefined();
    vi.restoreAllMocks();
    value(await store.put(more));
    expect(value(await (await tab()).get(stored.id))?.record.photos).toEqual(more.record.photos);
  });

  it("opens without a photo whose picture is gone", async () => {
    const store = await tab();
    const stored = value(
      await store.put(withPhotos(newStoredCheck("Tern"), photo("AAAA"), photo("BBBB"))),
    );
    const handle = new DatabaseHandle();
    closedLater(handle);
    await handle.run(async (database) => {
      const [key] = await database.getAllKeys("pictures");
      if (key !== undefined) await database.delete("pictures", key);
    });
    const [data] = await pictures();
    const whole = value(await (await tab()).get(stored.id));
    expect(whole?.record.photos).toEqual([photo(data ?? "")]);
  });
});

describe("a row with photos that cannot be", () => {
  it("is listed and opened with those that can", async () => {
    const sound = withPhotos(newStoredCheck("Tern"), photo("AAAA"));
    const odd = [
      null,
      7,
      "photo",
      [],
      {},
      { data: 5 },
      { picture: 5 },
      { picture: "gone", length: 3 },
    ];
    const handle = new DatabaseHandle();
    closedLater(handle);
    const row = { ...sound, record: { ...sound.record, photos: [...odd, photo("AAAA")] } };
    await handle.run((database) => database.put("checks", row as unknown as StoredCheck));
    for (const photos of ["none", { 0: "x" }, null]) {
      const other = newStoredCheck("Brant");
      const broken = { ...other, record: { ...other.record, photos } };
      await handle.run((database) => database.put("checks", broken as unknown as StoredCheck));
    }
    const store = await tab();
    const listed = value(await store.list());
    expect(listed.map(({ name }) => name).sort()).toEqual(["Brant", "Brant", "Brant", "Tern"]);
    expect(listed.find(({ id }) => id === sound.id)?.record.photos).toEqual([
      { length: 3 },
      { type: "image/jpeg", reading: "left.gap", caption: "Of AAAA", length: 4 },
    ]);
    expect(value(await store.get(sound.id))?.record.photos).toEqual([photo("AAAA")]);
    for (const { id } of listed) expect(value(await store.get(id))).not.toBeNull();
  });
});

describe("a row that an earlier version wrote, its pictures in it", () => {
  it("is listed and given back the same, and its pictures move as it is next written", async () => {
    const stored = withPhotos(newStoredCheck("Tern"), photo("AAAA"), photo("BBBB"));
    const handle = new DatabaseHandle();
    closedLater(handle);
    await handle.run((database) => database.put("checks", stored));
    const store = await tab();
    expect(value(await store.list())[0]).toEqual(listedCheck(stored));
    const whole = value(await store.get(stored.id)) as StoredCheck;
    expect(whole).toEqual(stored);
    expect(await pictures()).toEqual([]);
    value(await store.put(typed(whole, "21")));
    expect(await pictures()).toEqual(["AAAA", "BBBB"]);
    expect(value(await store.get(stored.id))?.record.photos).toEqual(stored.record.photos);
    expect(value(await store.list())[0]?.record.photos).toEqual(listedCheck(stored).record.photos);
  });
});

describe("a row that can't be listed", () => {
  it("is known by what can be read of its name", () => {
    const record = { vehicle: { label: "Marlow" } };
    const nameOf = (row: unknown) => rowSetAside(row, 7);
    expect(nameOf({ name: "Bay 1", record })).toEqual({ key: 7, name: "Bay 1" });
    expect(nameOf({ name: "  ", record })).toEqual({ key: 7, name: "Marlow" });
    expect(nameOf({ name: 5, record })).toEqual({ key: 7, name: "Marlow" });
    for (const row of [null, undefined, 5, {}, { record: null }, { record: { vehicle: null } }]) {
      expect(nameOf(row)).toEqual({ key: 7, name: "" });
    }
    expect(nameOf({ name: "a".repeat(80) })?.name).toBe(`${"a".repeat(60)}…`);
    expect(nameOf(newStoredCheck("Tern"))).toBeNull();
  });
});

describe("a check where no picture is to be written", () => {
  it("names those that are in the storage, and holds the others", async () => {
    const store = await tab();
    const kept = value(await store.put(withPhotos(newStoredCheck("Tern"), photo("AAAA"))));
    const row = rowOf(withPhotos(kept, ...(kept.record.photos ?? []), photo("BBBB")));
    const [known, fresh] = (row.record.photos ?? []) as unknown as Record<string, unknown>[];
    expect(known).toMatchObject({ picture: expect.any(String), length: 4 });
    expect("data" in (known ?? {})).toBe(false);
    expect(fresh).toEqual(photo("BBBB"));
    const bare = newStoredCheck("Brant");
    expect(rowOf(bare)).toBe(bare);
  });
});
