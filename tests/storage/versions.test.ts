import type { Entry } from "../../src/records/entry/entry.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { readdirSync } from "node:fs";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import type { Photo } from "../../src/records/check/checkRecord.ts";
import { choiceValues } from "../../src/records/check/choices.ts";
import { completeRecord } from "../../src/records/check/completeRecord.ts";
import type { StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { type Pack, packVersion } from "../../src/records/pack/pack.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";
import { databaseVersion } from "../../src/storage/database.ts";
import { deskMigrations } from "../../src/storage/deskDatabase.ts";
import { openDeskStore } from "../../src/storage/deskStore.ts";
import { MarkStore } from "../../src/storage/markStore.ts";
import { openPackStore } from "../../src/storage/packStore.ts";
import { ReplyStore } from "../../src/storage/replyStore.ts";
import { choicesMade } from "./support/choicesMade.ts";
import {
  type OldDatabase,
  oldDatabase,
  putOldDatabase,
  rowsOf,
  storesOf,
} from "./support/oldDatabase.ts";

vi.setConfig({ testTimeout: 30_000 });

// The files in "versions" were written by the very releases they are named after, not by today's code.

const opened: { close(): void }[] = [];

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

afterEach(() => {
  for (const store of opened.splice(0)) store.close();
  vi.unstubAllGlobals();
});

function value<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}

/** The checks of a list, with their pictures. */
async function wholeOnes(
  store: CheckStore,
  which: "present" | "deleted" = "present",
): Promise<StoredCheck[]> {
  const listed = value(await store.list(which));
  const whole = await Promise.all(listed.map(async ({ id }) => value(await store.get(id))));
  return whole.filter((check) => check !== null);
}

async function openChecks(): Promise<CheckStore> {
  const store = value(await openCheckStore(inModelUnits));
  opened.push(store);
  return store;
}

const range = (count: number) => Array.from({ length: count }, (_, index) => index + 1);

it("there is stored data of every version before today's", () => {
  const files = readdirSync("tests/storage/versions").sort();
  expect(files).toEqual([
    ...range(databaseVersion - 1).map((version) => `checks-${version}.json`),
    ...range(deskMigrations.length - 1).map((version) => `desk-${version}.json`),
  ]);
});

it("there is stored data with every kind of choice", () => {
  const made = new Set(Object.values(choicesMade).flatMap((choices) => Object.keys(choices)));
  const patterns = [...made].map((id) =>
    id.replace(/^(aside\.)?(left|right)\./, "side.").replace(/\.\d+\./, ".#."),
  );
  // Nobody could put a part's id aside with a stop typed by hand: it has none.
  expect([...new Set(patterns), "aside.stop.hand.stop.packId"].sort()).toEqual(
    Object.keys(choiceValues).sort(),
  );
});

/**
 * A row as it is opened: of version 2, with the pictures that stand apart, and with what waits aside and
 * what was chosen in fields of its own.
 */
function inTodaysShape(row: StoredCheck, { stores }: OldDatabase): StoredCheck {
  const pictures = (stores.pictures?.rows ?? []) as readonly { key: string; data: string }[];
  const photos = row.record.photos?.map((photo) => {
    const { picture, length: _, ...rest } = photo as Photo & { picture?: string; length?: number };
    const found = pictures.find(({ key }) => key === `${row.id} ${picture}`);
    return picture === undefined ? photo : { ...rest, data: found?.data ?? "" };
  });
  const waiting = { left: "aside.left", right: "aside.right", handStop: "aside.stop.hand" };
  const entries = { ...row.entries } as { [id: string]: Entry };
  const aside: { [name: string]: unknown } = {};
  for (const [name, id] of Object.entries(waiting)) {
    const [json] = entries[id]?.texts ?? [];
    if (json !== undefined) aside[name] = JSON.parse(json);
    delete entries[id];
  }
  const choices = choicesMade[row.name] ?? {};
  for (const [id, value] of Object.entries(choices)) {
    expect(entries[id], id).toEqual({ texts: [value], unit: "", tol: "" });
    delete entries[id];
  }
  return {
    ...row,
    record: { ...row.record, version: 2, ...(photos && { photos }) },
    entries,
    choices,
    ...(Object.keys(aside).length > 0 && { aside }),
  };
}

describe.each(range(databaseVersion - 1))("checks stored by version %i", (version) => {
  const old = oldDatabase(`checks-${version}`);
  const rows = (old.stores.checks?.rows ?? []) as readonly StoredCheck[];

  it("are all there, to the last field, and what was put away is joined in", async () => {
    await putOldDatabase(old);
    const store = await openChecks();
    const all = [...(await wholeOnes(store)), ...(await wholeOnes(store, "deleted"))];
    expect(all).toHaveLength(rows.length);
    for (const row of rows) {
      const now = all.find(({ id }) => id === row.id);
      if (row.progress.step !== "right.gap") {
        expect(now).toEqual(inTodaysShape(row, old));
        continue;
      }
      // The page of that version was closed in the middle of this one.
      expect(now?.entries).toEqual({
        ...row.entries,
        "left.rideHeight": { texts: ["512"], unit: "mm", tol: "2" },
      });
      expect(now?.record.corners[0]?.rideHeight?.values).toEqual([512]);
      expect(now?.choices).toEqual({});
      expect(now?.progress).toEqual(row.progress);
    }
    expect(await rowsOf("stopfit", "unjoined")).toEqual([]);
  });

  it("are complete where they were, photo included, and can be gone on with", async () => {
    await putOldDatabase(old);
    const store = await openChecks();
    const present = await wholeOnes(store);
    const done = present.filter((stored) => completeRecord(stored).ok);
    expect(done).toHaveLength(1);
    expect(done[0]?.record.photos?.[0]?.caption).toBe("Left pad");
    const draft = present.find(({ name }) => name === "Tern, half done");
    if (draft === undefined) throw new Error("the draft is gone");
    expect(draft.entries["right.gap"]?.texts).toEqual(["7/8", "2 5/"]);
    const entry = { texts: ["22"], unit: "mm" as const, tol: "" };
    value(await store.put(setEntry(draft, "right.gap", entry)));
    const again = await openChecks();
    expect(value(await again.get(draft.id))?.entries["right.gap"]).toEqual(entry);
    value(await again.restore(value(await again.list("deleted"))[0]?.id ?? ""));
    expect(value(await again.list())).toHaveLength(rows.length);
  });

  it("keep their neighbours: the pack in use, and places for what came later", async () => {
    await putOldDatabase(old);
    await openChecks();
    const packs = openPackStore();
    opened.push(packs);
    const [kept] = (old.stores.packs?.rows ?? []) as readonly { pack: Pack }[];
    // A pack of version 1 is read as one of today that lacks what came since.
    const today = kept ? { ...kept.pack, version: packVersion } : null;
    expect(value(await packs.get())?.pack ?? null).toEqual(today);
    const marks = new MarkStore();
    opened.push(marks);
    expect(value(await marks.safekeeping()).lastBackupAt).toBeNull();
    expect(value(await marks.phone())).toBe(value(await marks.phone()));
  });
});

describe("an earlier database", () => {
  const named = [
    ...range(databaseVersion - 1).map((version) => `checks-${version}`),
    ...range(deskMigrations.length - 1).map((version) => `desk-${version}`),
  ];

  it.each(named)("%s is brought to the very stores that a fresh one has", async (which) => {
    const open = () => (which.startsWith("desk") ? openDeskStore() : openCheckStore(inModelUnits));
    const old = oldDatabase(which);
    const asFresh = async () => {
      value<{ close(): void }>(await open()).close();
      return storesOf(old.name);
    };
    const fresh = await asFresh();
    vi.stubGlobal("indexedDB", new IDBFactory());
    await putOldDatabase(old);
    expect(await asFresh()).toEqual(fresh);
  });
});

describe.each(range(deskMigrations.length - 1))("the desk as version %i left it", (version) => {
  const old = oldDatabase(`desk-${version}`);

  it("has all its submissions, texts, answers, decisions and replies", async () => {
    await putOldDatabase(old);
    const store = value(await openDeskStore());
    opened.push(store);
    for (const name of ["submissions", "texts", "assessments", "decisions", "replies"]) {
      expect(await rowsOf("stopfit-desk", name), name).toEqual(old.stores[name]?.rows);
    }
    expect(value(await store.decisions())).toEqual(old.stores.decisions?.rows);
    expect(value(await store.countUncomputed())).toBe(1);
    const replies = new ReplyStore();
    opened.push({ close: () => replies.dispose() });
    const [reply] = (old.stores.replies?.rows ?? []) as readonly { storedId: string }[];
    expect(value(await replies.openFor(reply?.storedId ?? ""))).toEqual(reply);
  });

  it("is listed, taken in again as known, and backed up", async () => {
    await putOldDatabase(old);
    const store = value(await openDeskStore());
    opened.push(store);
    const texts = (old.stores.texts?.rows ?? []) as readonly { key: string; text: string }[];
    const listed = value(await store.renewSnapshot());
    expect(listed.map(({ key }) => key).sort()).toEqual(texts.map(({ key }) => key).sort());
    const whole: string[] = [];
    for await (const page of store.wholeSubmissions(1)) {
      for (const { text } of value(page)) whole.push(text);
    }
    expect(whole.sort()).toEqual(texts.map(({ text }) => text).sort());
  });
});
