import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { demoRecord } from "../support/demoRecords.ts";
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { poolAnswer, poolWork } from "../../src/compute/poolWork.ts";
import { fail, type Outcome } from "../../src/physics/outcome.ts";
import { type BackupLine, backupLineText } from "../../src/records/backup/backupLine.ts";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { withJob } from "../../src/records/filling/job.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import type { Decision } from "../../src/records/review/decision.ts";
import type { Incoming } from "../../src/records/review/submission.ts";
import { makeBackup, markBackedUp } from "../../src/storage/backup.ts";
import type { ReadLines } from "../../src/storage/backupPass.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";
import { type DeskStore, openDeskStore } from "../../src/storage/deskStore.ts";
import { MarkStore } from "../../src/storage/markStore.ts";
import {
  type RestoreCounts,
  type Restored,
  restoreBackup,
  undoRestore,
} from "../../src/storage/restoreBackup.ts";
import { type BackupSurvey, surveyBackup } from "../../src/storage/surveyBackup.ts";

import { tinyPhoto } from "../support/pictures.ts";

vi.setConfig({ testTimeout: 30_000 });

const record = demoRecord("arm-fits");
const photo = { ...tinyPhoto, caption: "Left pad" };
const job = { id: "j1", label: "Marlow", number: "4107", customer: "I. Farrow" };
const complete = withJob(storedFromRecord({ ...record, photos: [photo] }), {
  ...job,
  moment: "before",
});
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
  const checks = value(await openCheckStore(inModelUnits));
  const desk = value(await openDeskStore());
  opened.push(checks, desk);
  return { checks, desk };
}

const readLines: ReadLines = async (lines, first) => {
  const done = await poolAnswer({ kind: "backupLines", lines, first });
  if (done.kind === "backupLines") return done.entries;
  return [
    done.kind === "failed" ? { ok: false, fault: done.fault } : fail("notRead", ["not read"]),
  ];
};

async function incomingOf(text: string): Promise<Incoming> {
  const done = poolWork({ kind: "read", text, what: "The file", way: "file" });
  const [item] = done.kind === "read" ? done.items : [];
  return value(item ?? fail("notRead", ["not read"]));
}

async function restoreWhole(file: Blob, withDecisions = false): Promise<Restored> {
  const { checks, desk } = await stores();
  return restoreBackup(file, {
    desk,
    checks,
    readLines,
    withDecisions,
    onCounts: () => undefined,
    signal: new AbortController().signal,
  });
}

async function restore(file: Blob): Promise<{ counts: RestoreCounts; outcome: Outcome<null> }> {
  const { counts, fault } = await restoreWhole(file);
  return { counts, outcome: fault === null ? { ok: true, value: null } : { ok: false, fault } };
}

async function survey(file: Blob): Promise<BackupSurvey> {
  const { checks, desk } = await stores();
  const signal = new AbortController().signal;
  const found = value(await surveyBackup(file, { desk, checks, readLines, signal }));
  if (found === null) throw new Error("stopped");
  return found;
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
  const gone = withJob(newStoredCheck("Brant, deleted"), job);
  for (const stored of [complete, draft, gone]) value(await checks.put(stored));
  value(await checks.remove(gone.id));
  value(await desk.add([await incomingOf(JSON.stringify(record))]));
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
    expect(before.filter((check) => check.record.job?.id === job.id)).toHaveLength(2);
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

describe("before anything of a backup is restored", () => {
  const decision: Decision = {
    key: "d1",
    checkId: record.id,
    submission: "any",
    kind: "accept",
    by: "M. Lind",
    at: "2099-01-01T00:00:00.000Z",
    note: "",
  };
  const linesOf = (...lines: readonly BackupLine[]) =>
    new Blob([
      backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" }),
      ...lines.map(backupLineText),
      backupLineText({ kind: "end", lines: lines.length }),
    ]);

  it("it is told what is in it and what it would change, and nothing is written", async () => {
    await fillPhone();
    const file = await backup();
    const here = await survey(file);
    expect(here).toMatchObject({ madeHere: true, fault: null, checks: { present: 3 } });
    expect(here.submissions).toEqual({ added: 0, present: 1 });
    newPhone();
    const there = await survey(file);
    expect(there.madeHere).toBe(false);
    expect([...there.checks.added].sort()).toEqual(
      ["Brant, deleted", record.vehicle.label, "Tern, half done"].sort(),
    );
    expect(there.submissions).toEqual({ added: 1, present: 0 });
    expect(await everything()).toEqual([]);
    const { desk } = await stores();
    expect(value(await desk.submissions())).toEqual([]);
  });

  it("it is told in which checks readings are replaced, and in which they are only added", async () => {
    const { checks } = await stores();
    const gap = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "1" });
    const one = setEntry(newStoredCheck("Osprey"), "left.gap", gap("21"));
    const two = setEntry(newStoredCheck("Brant"), "left.gap", gap("30"));
    for (const stored of [one, two]) value(await checks.put(stored));
    const later = new Date(Date.now() - 1).toISOString();
    const file = linesOf(
      { kind: "check", check: { ...setEntry(one, "left.gap", gap("25")), updatedAt: later } },
      {
        kind: "check",
        check: { ...setEntry(two, "right.gap", gap("31")), updatedAt: "2020-01-01T00:00:00Z" },
      },
    );
    await new Promise((done) => setTimeout(done, 5));
    const newer = linesOf({
      kind: "check",
      check: { ...setEntry(one, "left.gap", gap("25")), updatedAt: new Date().toISOString() },
    });
    await new Promise((done) => setTimeout(done, 5));
    expect((await survey(newer)).checks).toMatchObject({ replaced: ["Osprey"], filled: [] });
    expect((await survey(file)).checks).toMatchObject({ filled: ["Brant"] });
  });

  it("what is replaced stays among the deleted checks, and all of it can be taken back", async () => {
    const { checks, desk } = await stores();
    const gap = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "1" });
    const one = setEntry(newStoredCheck("Osprey"), "left.gap", gap("21"));
    value(await checks.put(one));
    await new Promise((done) => setTimeout(done, 5));
    const changed = {
      ...setEntry(one, "left.gap", gap("25")),
      updatedAt: new Date().toISOString(),
    };
    await new Promise((done) => setTimeout(done, 5));
    const submission = {
      kind: "submission" as const,
      text: JSON.stringify(record),
      receivedAt: "9999-12-31T00:00:00Z",
      way: "file" as const,
      photosLeftOut: 0,
    };
    const file = linesOf(
      { kind: "check", check: changed },
      { kind: "check", check: draft },
      submission,
      { kind: "decision", decision },
    );
    const { receipt, fault } = await restoreWhole(file, true);
    expect(fault).toBeNull();
    expect(value(await checks.get(one.id))?.entries["left.gap"]?.texts).toEqual(["25"]);
    const [aside] = value(await checks.list("deleted"));
    expect(aside?.name).toBe("Osprey (before a backup was restored)");
    expect(aside?.entries["left.gap"]?.texts).toEqual(["21"]);
    // A date ahead is no date: it came in now.
    const [kept] = value(await desk.submissions());
    expect(Date.parse(kept?.receivedAt ?? "")).toBeLessThanOrEqual(Date.now());
    const [decided] = value(await desk.decisions());
    expect(Date.parse(decided?.at ?? "")).toBeLessThanOrEqual(Date.now());
    expect(decided?.fromBackup).toMatch(/^20/);

    value(await undoRestore(receipt, { checks, desk }));
    expect(value(await checks.get(one.id))?.entries["left.gap"]?.texts).toEqual(["21"]);
    expect(value(await checks.list()).map(({ id }) => id)).toEqual([one.id]);
    expect(value(await checks.list("deleted"))).toEqual([]);
    expect(value(await desk.submissions())).toEqual([]);
    expect(value(await desk.decisions())).toEqual([]);
  });

  it("decisions in it are counted, and count only where someone says so", async () => {
    const file = linesOf({ kind: "decision", decision });
    expect((await survey(file)).decisions).toEqual({ added: 1, present: 0 });
    await restoreWhole(file);
    const { desk } = await stores();
    expect(value(await desk.decisions())).toEqual([]);
    await restoreWhole(file, true);
    expect(value(await desk.decisions())).toHaveLength(1);
    // What a file says of where it came from is not believed.
    const again = linesOf({
      kind: "decision",
      decision: { ...decision, key: "d2", fromBackup: "no" },
    });
    await restoreWhole(again, true);
    const [, second] = value(await desk.decisions());
    expect(second?.fromBackup).not.toBe("no");
  });

  it("a version that is dated ahead replaces nothing here", async () => {
    const { checks } = await stores();
    const gap = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "1" });
    const one = setEntry(newStoredCheck("Osprey"), "left.gap", gap("21"));
    value(await checks.put(one));
    for (const ahead of [
      "9999-12-31T23:59:59.999Z",
      new Date(Date.now() + 3_600_000).toISOString(),
    ]) {
      const bent = { ...setEntry(one, "left.gap", gap("99")), updatedAt: ahead };
      const added = setEntry(bent, "right.gap", gap("31"));
      await restore(linesOf({ kind: "check", check: { ...added, updatedAt: ahead } }));
      const after = value(await checks.get(one.id));
      expect(after?.entries["left.gap"]?.texts).toEqual(["21"]);
      expect(after?.entries["right.gap"]?.texts).toEqual(["31"]);
    }
  });

  it("a file that does not begin as one, of a newer version or with no version is read no further", async () => {
    const [, check = ""] = (await linesOf({ kind: "check", check: draft }).text()).split("\n");
    const header = (version: unknown) =>
      `{"format":"stopfit-backup","version":${version},"kind":"header","createdAt":"2026-05-02T10:00:00.000Z"}`;
    const end = '{"kind":"end","lines":1}';
    const codeOf = async (...lines: readonly string[]) => {
      newPhone();
      const { outcome } = await restore(new Blob([`${lines.join("\n")}\n`]));
      expect(await everything()).toEqual([]);
      return outcome.ok ? "" : outcome.fault.code;
    };
    expect(await codeOf(check, header(1), end)).toBe("notABackup");
    expect(await codeOf(header(2), check, end)).toBe("backupNewer");
    for (const version of [0, -1, 1.5, '"1"', null]) {
      expect(await codeOf(header(version), check, end)).toBe("notABackup");
    }
  });

  it("lines that are more or fewer than its end says are told", async () => {
    const text = await linesOf({ kind: "check", check: draft }).text();
    for (const lines of [0, 2, 7]) {
      newPhone();
      const told = await survey(new Blob([text.replace('"lines":1', `"lines":${lines}`)]));
      expect(told.fault?.code).toBe("backupCut");
      expect(inModelUnits(told.fault?.sentence ?? [])).toContain(
        `${lines} entries, but one entry can be read`,
      );
    }
  });

  it("many empty lines and one that never ends hold up nothing", async () => {
    const text = await linesOf({ kind: "check", check: draft }).text();
    const [header = "", ...rest] = text.split("\n");
    newPhone();
    const long = await survey(new Blob([`${header}\n`, "\n".repeat(500_000), rest.join("\n")]));
    expect(long).toMatchObject({ fault: null, checks: { added: [draft.name] } });
    const endless = await survey(
      new Blob([`${header}\n`, "x".repeat(33_000_000), `\n${rest.join("\n")}`]),
    );
    expect(endless.fault?.code).toBe("backupPartly");
    expect(endless.checks.added).toEqual([draft.name]);
    // A line of exactly as many characters as one may have, in many pieces, is read whole.
    const name = "x".repeat(31_000_000 - 20);
    const whole = await survey(
      new Blob([`${header}\n`, `{"kind":"${name}"}`, `\n${rest.join("\n")}`]),
    );
    expect(whole.fault?.code).toBe("backupPartly");
  });

  it("one of which next to nothing can be read is read no further than to know that", async () => {
    const text = await linesOf({ kind: "check", check: draft }).text();
    const [header = "", ...rest] = text.split("\n");
    let read = 0;
    const { checks, desk } = await stores();
    const look = (file: Blob) =>
      surveyBackup(file, {
        desk,
        checks,
        readLines: async (lines, first) => {
          const entries = await readLines(lines, first);
          read += entries.length;
          return entries;
        },
        signal: new AbortController().signal,
      });
    const spoilt = await look(new Blob([`${header}\n`, "x\n".repeat(200_000), rest.join("\n")]));
    expect(spoilt.ok ? "" : spoilt.fault.code).toBe("backupSpoilt");
    expect(read).toBeLessThan(1200);
    const damaged = value(
      await look(new Blob([`${header}\n`, "x\n".repeat(1000), rest.join("\n")])),
    );
    expect(damaged?.checks.added).toEqual([draft.name]);
    expect(damaged?.fault?.code).toBe("backupPartly");
  });

  it("a file that can no longer be read is told, by the look at it and by the restore", async () => {
    const gone = new Blob(["x"]);
    Object.defineProperty(gone, "stream", {
      value: () =>
        new ReadableStream({
          pull(controller) {
            controller.error(new DOMException("gone", "NotReadableError"));
          },
        }),
    });
    const { checks, desk } = await stores();
    const signal = new AbortController().signal;
    const found = await surveyBackup(gone, { desk, checks, readLines, signal });
    expect(found.ok ? "" : found.fault.code).toBe("fileUnreadable");
    expect((await restoreWhole(gone)).fault?.code).toBe("fileUnreadable");
    // Its lines were found, and the file changed before they were read.
    const changed = linesOf({ kind: "check", check: draft });
    Object.defineProperty(changed, "slice", {
      value: () => ({ text: () => Promise.reject(new DOMException("gone", "NotReadableError")) }),
    });
    const later = await surveyBackup(changed, { desk, checks, readLines, signal });
    expect(later.ok ? "" : later.fault.code).toBe("fileUnreadable");
    expect((await restoreWhole(changed)).fault?.code).toBe("fileUnreadable");
  });

  it("cautions that were acknowledged on another device are asked for again, on this one not", async () => {
    const ticked: StoredCheck = {
      ...draft,
      progress: { ...draft.progress, cautionsFor: "raised", stood: ["level"] },
    };
    const { checks } = await stores();
    const progressAfter = async () => value(await checks.get(draft.id))?.progress;
    value(await checks.put(ticked));
    const own = await backup();
    value(await checks.discard(draft.id));
    await restore(own);
    expect(await progressAfter()).toMatchObject({ cautionsFor: "raised", stood: ["level"] });
    value(await checks.discard(draft.id));
    await restore(linesOf({ kind: "check", check: ticked }));
    expect(await progressAfter()).toMatchObject({ cautionsFor: null, stood: [] });
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
