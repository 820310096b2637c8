import "fake-indexeddb/auto";
import { openDB } from "idb";
import { describe, expect, it } from "vitest";
import { soundStored } from "../../src/records/check/soundStored.ts";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { databaseName, databaseVersion } from "../../src/storage/database.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const half = "\ud83d";
const gap = { texts: ["21"], unit: "mm" as const, tol: "1" };
const sound = setEntry(newStoredCheck("Tern"), "left.gap", gap);

/** Puts rows into the storage as they are, past the app. */
async function putRows(...rows: readonly unknown[]): Promise<void> {
  const store = await tab();
  store.close();
  const database = await openDB(databaseName, databaseVersion);
  for (const row of rows) await database.put("checks", row);
  database.close();
}

async function pictures(): Promise<string[]> {
  const database = await openDB(databaseName, databaseVersion);
  const keys = (await database.getAllKeys("pictures")) as string[];
  database.close();
  return keys;
}

describe("at the next opening", () => {
  it("a check whose id no address can hold gets one that can, its readings and pictures with it", async () => {
    const photo = { type: "image/png" as const, data: "iVBORw0KGgo=" };
    const store = await tab();
    value(await store.put({ ...sound, record: { ...sound.record, photos: [photo] } }));
    store.close();
    const database = await openDB(databaseName, databaseVersion);
    const row = (await database.get("checks", sound.id)) as { record: { photos: object[] } };
    const [kept] = row.record.photos as { picture: string }[];
    const picture = (await database.get("pictures", `${sound.id} ${kept?.picture}`)) as object;
    await database.put("pictures", { ...picture, key: `${half} ${kept?.picture}` });
    await database.put("checks", { ...row, id: half });
    await database.delete("checks", sound.id);
    database.close();

    const again = await tab();
    const [listed] = value(await again.list());
    expect(listed?.id).toMatch(/^[0-9a-f-]{36}$/);
    const whole = value(await again.get(listed?.id ?? ""));
    expect(whole?.entries["left.gap"]).toEqual(gap);
    expect(whole?.record.photos).toEqual([photo]);
    expect(whole?.record.id).toBe(listed?.id);
    expect((await pictures()).filter((key) => key.startsWith(half))).toEqual([]);
  });

  it("a date far ahead is today's, so that what is typed next counts as newer", async () => {
    await putRows({ ...sound, updatedAt: "9999-12-31T23:59:59.999Z" });
    const store = await tab();
    const today = new Date().toISOString().slice(0, 10);
    expect(value(await store.list())[0]?.updatedAt.slice(0, 10)).toBe(today);
    const stored = value(await store.get(sound.id)) as StoredCheck;
    const next = value(await store.put(setEntry(stored, "left.gap", { ...gap, texts: ["25"] })));
    expect(next.updatedAt.slice(0, 10)).toBe(today);
  });

  it("what was marked as deleted in a year to come can be deleted for good", async () => {
    await putRows({ ...sound, deletedAt: "9999-12-31T23:59:59.999Z" });
    const store = await tab();
    expect(value(await store.list("deleted"))).toHaveLength(1);
    expect(value(await store.purge(new Date()))).toBe(1);
  });
});

describe("a row that is no check", () => {
  it("is set aside under its name, is saved as it is, and deleted alone", async () => {
    await putRows(
      sound,
      { id: 7, name: `Brant \u202e${half}`, record: {} },
      { id: [1], record: 5 },
    );
    const store = await tab();
    expect(value(await store.list()).map(({ id }) => id)).toEqual([sound.id]);
    const aside = value(await store.setAside());
    expect(aside).toEqual([
      { key: 7, name: "Brant \ufffd" },
      { key: [1], name: "" },
    ]);
    expect(JSON.parse(value(await store.rowText(7)))).toMatchObject({ id: 7, record: {} });
    value(await store.discard(7));
    expect(value(await store.setAside())).toHaveLength(1);
    expect(value(await store.list())).toHaveLength(1);
  });

  it("without a date is listed all the same where it is a check", async () => {
    const { updatedAt: _, ...dateless } = sound;
    await putRows(dateless);
    expect(value(await (await tab()).list()).map(({ id }) => id)).toEqual([sound.id]);
  });

  it("that holds itself, or a number no JSON has, is saved all the same", async () => {
    const circle: { id: number; self?: unknown; big: bigint } = { id: 8, big: 12n };
    circle.self = circle;
    await putRows(circle);
    const store = await tab();
    expect(JSON.parse(value(await store.rowText(8)))).toEqual({ id: 8, big: "12" });
  });
});

describe("what no screen can show of a check", () => {
  const opened = (record: object, rest: object = {}) =>
    soundStored({ ...structuredClone(sound), ...rest, record: { ...sound.record, ...record } });

  it.each([
    ["events that are none", { rules: { events: 5, reserveMm: 7 } }, "rules", { reserveMm: 7 }],
    ["an event that is none", { rules: { events: [null] } }, "rules", {}],
    [
      "an event without its height",
      { rules: { events: [{ kind: "landing" }], roadClass: "Z" } },
      "rules",
      {},
    ],
    [
      "an estimate that is no words",
      { stop: { name: "Tall", estimated: { how: 5 } } },
      "stop",
      {
        name: "Tall",
      },
    ],
    [
      "an estimate of the ride that is no words",
      { ride: { unsprungMassKg: 40, estimated: { unsprungMassKg: 5 } } },
      "ride",
      { unsprungMassKg: 40, estimated: {} },
    ],
    [
      "a photo of a kind that is none",
      { photos: [{ type: "text/html", data: "AAAA" }] },
      "photos",
      [],
    ],
    ["a name that is none", { author: { role: "king", name: 7 } }, "author", {}],
  ])("is left out: %s", (_, record, field, expected) => {
    expect(opened(record)?.record[field as "rules"]).toEqual(expected);
  });

  it("of a limit is its kind alone: the clearance stays", () => {
    const limit = { kind: "moon", at: "wheel", reading: { values: [80], tol: 1 } };
    const stored = opened({ corners: [{ side: "left", limits: [limit] }] });
    expect(stored?.record.corners[0]?.limits).toEqual([{ ...limit, kind: "other" }]);
  });

  it("of the walk through readings is the walk, and a sound one stays", () => {
    const doubt = { about: "reserve", side: "left", halfWidthMm: 3 };
    const now = {
      reading: "left.gap",
      before: gap,
      tool: null,
      removes: 0.4,
      sentence: ["Off by ", { kind: "length", value: 3 }],
      doubt,
    };
    const again = { level: "unsure", done: [], now, left: 1, just: null };
    expect(opened({}, { again })?.again).toEqual(again);
    for (const part of [{ kind: "colour", value: 3 }, { kind: "length", value: Number.NaN }, 7]) {
      const bent = { ...again, now: { ...now, sentence: [part] } };
      expect(opened({}, { again: bent })?.again).toBeUndefined();
    }
  });

  it("of its texts are controls and marks of direction", () => {
    const stored = opened({ vehicle: { label: "Marlow \u202eSTIF" } }, { name: `x${half}` });
    expect(stored?.name).toBe("x\ufffd");
    expect(stored?.record.vehicle?.label).toBe("Marlow STIF");
  });
});
