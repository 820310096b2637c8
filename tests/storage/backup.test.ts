import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { poolWork } from "../../src/compute/poolWork.ts";
import { fail, type Outcome } from "../../src/physics/outcome.ts";
import { inModelUnits } from "../../src/physics/sentence.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import {
  newStoredCheck,
  type StoredCheck,
  setEntry,
  storedFromRecord,
} from "../../src/records/check/storedCheck.ts";
import type { Incoming, Way } from "../../src/records/review/submission.ts";
import {
  makeBackup,
  markBackedUp,
  type RestoreCounts,
  restoreBackup,
} from "../../src/storage/backup.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";
import { type DeskStore, openDeskStore } from "../../src/storage/deskStore.ts";
import { MarkStore } from "../../src/storage/markStore.ts";

vi.setConfig({ testTimeout: 30_000 });

const record = JSON.parse(readFileSync("demo-data/checks/arm-fits.json", "utf8")) as CheckRecord;
const photo = {
  type: "image/png" as const,
  data: "iVBORw0KGgo=".repeat(2000),
  caption: "Left pad",
};
const complete = storedFromRecord({ ...record, photos: [photo] });
const draft = setEntry(newStoredCheck("Tern, half done"), "left.gap", {
  texts: ["21", "2 5/"],
  unit: "in",
  tol: "1/32",
});

const opened: { close(): void }[] = [];

beforeEach(newPhone);

afterEach(() => {
  for (const store of opened.splice(0)) store.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function newPhone(): void {
  for (const store of opened.splice(0)) store.close();
  vi.stubGlobal("indexedDB", new IDBFactory());
}

function value<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}

async function stores(): Promise<{ checks: CheckStore; desk: DeskStore }> {
  const checks = value(await openCheckStore());
  const desk = value(await openDeskStore());
  opened.push(checks, desk);
  return { checks, desk };
}

async function readSubmission(text: string, way: Way): Promise<Outcome<Incoming>> {
  const read = poolWork({ kind: "read", text, what: "The backup's check", way });
  const [item] = read.kind === "read" ? read.items : [];
  return item ?? fail("backupRecord", ["not read"]);
}

async function restore(file: Blob): Promise<{ counts: RestoreCounts; outcome: Outcome<null> }> {
  const { checks, desk } = await stores();
  let counts: RestoreCounts = { added: 0, present: 0, joined: 0 };
  const outcome = await restoreBackup(file, {
    desk,
    checks,
    readSubmission,
    onCounts: (now) => {
      counts = now;
    },
    signal: new AbortController().signal,
  });
  return { counts, outcome };
}

async function backup(): Promise<File> {
  const { checks, desk } = await stores();
  return value(await makeBackup(desk, checks)).file;
}

async function everything(): Promise<StoredCheck[]> {
  const { checks } = await stores();
  const all = [...value(await checks.list()), ...value(await checks.list("deleted"))];
  const whole = await Promise.all(all.map(async ({ id }) => value(await checks.get(id))));
  return whole.filter((check) => check !== null).sort((a, b) => (a.id < b.id ? -1 : 1));
}

async function fillPhone(): Promise<StoredCheck[]> {
  const { checks, desk } = await stores();
  const gone = newStoredCheck("Brant, deleted");
  for (const stored of [complete, draft, gone]) value(await checks.put(stored));
  value(await checks.remove(gone.id));
  const incoming = value(await readSubmission(JSON.stringify(record), "file"));
  value(await desk.add([incoming]));
  return everything();
}

describe("one file with everything", () => {
  it("brings photos, drafts, deleted checks and the desk to an empty phone, to the last field", async () => {
    const before = await fillPhone();
    const file = await backup();
    expect(file.name).toMatch(/^stopfit-backup-\d{4}-\d\d-\d\d-\d\d-\d\d\.txt$/);
    newPhone();
    const { counts, outcome } = await restore(file);
    expect(outcome.ok).toBe(true);
    expect(counts).toEqual({ added: 4, present: 0, joined: 0 });
    expect(await everything()).toEqual(before);
    const { desk } = await stores();
    expect(value(await desk.submissions())).toHaveLength(1);
  });

  it("restored twice, or where it was made, changes nothing", async () => {
    const before = await fillPhone();
    const file = await backup();
    expect((await restore(file)).counts).toEqual({ added: 0, present: 4, joined: 0 });
    expect(await everything()).toEqual(before);
    newPhone();
    await restore(file);
    expect((await restore(file)).counts).toEqual({ added: 0, present: 4, joined: 0 });
    expect(await everything()).toEqual(before);
  });

  it("never puts the older in the place of the newer, with the clock set back either", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime("2026-05-04T12:00:00Z");
    await fillPhone();
    const file = await backup();
    vi.setSystemTime("2026-04-01T08:00:00Z");
    const { checks } = await stores();
    const present = value(await checks.get(draft.id)) as StoredCheck;
    const entry = { texts: ["30"], unit: "mm" as const, tol: "1" };
    value(await checks.put(setEntry(present, "left.gap", entry)));
    expect((await restore(file)).counts.joined).toBe(0);
    const after = (await everything()).find(({ id }) => id === draft.id);
    expect(after?.entries["left.gap"]).toEqual(entry);
  });

  it("joins what was measured on two phones", async () => {
    await fillPhone();
    const file = await backup();
    newPhone();
    await restore(file);
    const second = await stores();
    const there = value(await second.checks.get(draft.id)) as StoredCheck;
    const right = { texts: ["40"], unit: "mm" as const, tol: "1" };
    value(await second.checks.put(setEntry(there, "right.gap", right)));
    const fromSecond = await backup();
    newPhone();
    await restore(file);
    const first = await stores();
    const here = value(await first.checks.get(draft.id)) as StoredCheck;
    const height = { texts: ["512"], unit: "mm" as const, tol: "1" };
    value(await first.checks.put(setEntry(here, "left.rideHeight", height)));
    expect((await restore(fromSecond)).counts).toMatchObject({ added: 1, joined: 1 });
    const joined = (await everything()).find(({ id }) => id === draft.id);
    expect(joined?.entries).toEqual({
      ...draft.entries,
      "right.gap": right,
      "left.rideHeight": height,
    });
  });

  it("cut short, damaged or newer is told, and what can be read of it is restored", async () => {
    await fillPhone();
    const text = await (await backup()).text();
    const lines = text.trimEnd().split("\n");
    const faultOf = async (given: string) => {
      newPhone();
      const { outcome } = await restore(new Blob([given]));
      return outcome.ok ? "" : inModelUnits(outcome.fault.sentence);
    };
    expect(await faultOf(lines.slice(0, -1).join("\n"))).toMatch(/cut short: it ends after 4/);
    expect(await everything()).toHaveLength(3);
    const bent = lines.map((line, index) => (index === 2 ? line.slice(0, 40) : line)).join("\n");
    expect(await faultOf(bent)).toMatch(/^One entry of the backup could not be read/);
    expect(await everything()).toHaveLength(2);
    expect(await faultOf(text.replace('"version":1', '"version":7'))).toMatch(/newer version/);
    expect(await everything()).toEqual([]);
  });

  it("of an earlier version, without the device that made it, is joined by time", async () => {
    await fillPhone();
    const text = await (await backup()).text();
    const older = text.replace(/,"phone":"[^"]+"/, "");
    expect(older).not.toBe(text);
    const { checks } = await stores();
    const present = value(await checks.get(draft.id)) as StoredCheck;
    const entry = { texts: ["30"], unit: "mm" as const, tol: "1" };
    value(await checks.put(setEntry(present, "left.gap", entry)));
    expect((await restore(new Blob([older]))).counts).toMatchObject({ added: 0 });
    const after = (await everything()).find(({ id }) => id === draft.id);
    expect(after?.entries["left.gap"]).toEqual(entry);
  });
});

describe("what is remembered of it", () => {
  it("is when the last was made, once it was saved, and which content is safe", async () => {
    await fillPhone();
    const { checks, desk } = await stores();
    const marks = new MarkStore();
    opened.push(marks);
    expect(value(await marks.safekeeping()).lastBackupAt).toBeNull();
    const made = value(await makeBackup(desk, checks));
    expect(value(await marks.safekeeping()).lastBackupAt).toBeNull();
    await markBackedUp(made);
    const known = value(await marks.safekeeping());
    expect(known.lastBackupAt).toBe(made.createdAt);
    expect(known.safe.size).toBe(3);
    // The next one forgets checks that are no longer here.
    await checks.purge(new Date(Date.now() + 1000));
    await markBackedUp(value(await makeBackup(desk, checks)));
    expect(value(await marks.safekeeping()).safe.size).toBe(2);
  });
});
