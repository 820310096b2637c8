// @vitest-environment node
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Pool } from "../../../src/compute/pool.ts";
import { poolAnswer } from "../../../src/compute/poolWork.ts";
import type { Unpacked } from "../../../src/compute/unpack.ts";
import { backupLineText } from "../../../src/records/backup/backupLine.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { deskChecks } from "../../../src/records/review/decision.ts";
import { deskLeft } from "../../../src/screens/desk/importLock.ts";
import {
  type ImportProgress,
  resumeImport,
  runImport,
} from "../../../src/screens/desk/importRun.ts";
import { sourcesOfFiles } from "../../../src/screens/desk/sources.ts";
import { type DeskStore, openDeskStore } from "../../../src/storage/deskStore.ts";
import { generateRecords } from "../../support/generateRecords.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

const records = [...generateRecords(120, 3)];
const sourceOf = (record: CheckRecord, number: number): Unpacked => ({
  kind: "text",
  text: JSON.stringify(record),
  what: `Text ${number}`,
  way: "file",
});

async function* all(sources: readonly Unpacked[]): AsyncGenerator<Unpacked> {
  yield* sources;
}

/** Works in this thread; `mostReads` tasks, then it answers no more, as in a page that is closed. */
function poolOf(mostReads = Number.POSITIVE_INFINITY): Pool {
  let reads = 0;
  return {
    size: 1,
    run: async (task) => {
      reads += 1;
      return reads > mostReads ? new Promise(() => undefined) : poolAnswer(task);
    },
    cancel: () => undefined,
    dispose: () => undefined,
  } as Pool;
}

async function open(): Promise<DeskStore> {
  const opened = await openDeskStore();
  if (!opened.ok) throw new Error(opened.fault.code);
  return opened.value;
}

function surroundings(store: DeskStore, pool = poolOf(), signal = new AbortController().signal) {
  const told: ImportProgress[] = [];
  const backups: File[] = [];
  const onBackup = (file: File) => backups.push(file);
  const onProgress = (progress: ImportProgress) => told.push(progress);
  return { store, pool, onBackup, backups, signal, onProgress, told };
}

function value<Value>(outcome: { ok: true; value: Value } | { ok: false }): Value {
  if (!outcome.ok) throw new Error("it failed");
  return outcome.value;
}

describe("an import", () => {
  it("takes everything, tells what it did, and leaves nothing waiting", async () => {
    const store = await open();
    const around = surroundings(store);
    const end = await runImport(all([...records, ...records.slice(0, 5)].map(sourceOf)), around);
    expect(end).toMatchObject({ state: "ended", taken: 125, added: 120, present: 5, total: 125 });
    expect(value(await store.submissions())).toHaveLength(120);
    expect(value(await store.inbox.begun())).toEqual([]);
    expect(around.told.map(({ state }) => state)).toContain("reading");
    expect(around.told.at(-1)).toMatchObject({ state: "running", through: 125 });
  });

  it("whose page is closed while it takes in is gone on with to its end, in another page", async () => {
    const store = await open();
    // 70 of 120 are read, and the page is gone in the middle of the second batch.
    runImport(all([...records.map(sourceOf)]), surroundings(store, poolOf(70)));
    await vi.waitFor(async () => {
      expect(value(await store.submissions())).toHaveLength(50);
    });
    const [begun] = value(await store.inbox.begun());
    if (!begun) throw new Error("it is not known that it was begun");
    expect(begun).toMatchObject({ stage: "taking", total: 120, counts: { added: 50, taken: 50 } });
    const other = await open();
    const end = await resumeImport(begun, surroundings(other));
    expect(end).toMatchObject({ state: "ended", added: 120, taken: 120, present: 0 });
    expect(end?.resumed).toBe(begun.startedAt);
    const kept = value(await other.submissions());
    expect(new Set(kept.map(({ checkId }) => checkId))).toEqual(
      new Set(records.map(({ id }) => id)),
    );
    expect(new Set(kept.map(({ receivedAt }) => receivedAt))).toEqual(new Set([begun.startedAt]));
    expect(value(await other.inbox.begun())).toEqual([]);
  });

  it("of a long file keeps it as bytes until it is read beside the screen, to its last character", async () => {
    const [record] = records;
    const long = JSON.stringify(record).replace("{", `{${" ".repeat(1_200_000)}`);
    const store = await open();
    runImport(sourcesOfFiles([new File([long], "long.json")]), surroundings(store, poolOf(0)));
    await vi.waitFor(async () => {
      expect(value(await store.inbox.begun())).toMatchObject([{ stage: "taking", total: 1 }]);
    });
    const [begun] = value(await store.inbox.begun());
    if (!begun) throw new Error("it is not known that it was begun");
    const [entry] = value(await store.inbox.next(begun.key, 10));
    expect(entry?.text).toBeInstanceOf(Blob);
    const other = await open();
    expect(await resumeImport(begun, surroundings(other))).toMatchObject({ added: 1, taken: 1 });
    const [kept] = value(await other.submissions());
    expect(value(await other.text(kept?.key ?? ""))).toBe(long);
  });

  it("whose page is closed while files are read has taken nothing in", async () => {
    const store = await open();
    async function* endless(): AsyncGenerator<Unpacked> {
      yield* records.map(sourceOf);
      await new Promise(() => undefined);
    }
    runImport(endless(), surroundings(store));
    await new Promise((done) => setTimeout(done, 100));
    const [begun] = value(await store.inbox.begun());
    expect(begun?.stage).toBe("reading");
    expect(value(await store.submissions())).toEqual([]);
    await store.inbox.end(begun?.key ?? "");
    expect(value(await store.inbox.next(begun?.key ?? "", 10))).toEqual([]);
  });

  it("that is stopped by hand drops the rest; one whose desk is left keeps it", async () => {
    for (const reason of ["stopped", deskLeft]) {
      vi.stubGlobal("indexedDB", new IDBFactory());
      const store = await open();
      const run = new AbortController();
      const around = surroundings(store, poolOf(), run.signal);
      const end = await runImport(all(records.map(sourceOf)), {
        ...around,
        onProgress: ({ through }) => {
          if (through > 0) run.abort(reason);
        },
      });
      expect(end).toMatchObject({ state: "stopped", added: 50 });
      expect(value(await store.inbox.begun())).toHaveLength(reason === deskLeft ? 1 : 0);
    }
  });

  it("tells of every file that is none, by its name, and takes the others", async () => {
    const store = await open();
    const good = JSON.stringify(records[0]);
    const files = [
      new File([good], "good.json"),
      new File([good.slice(0, 300)], "cut.json"),
      new File([], "empty.json"),
      new File(["PK\u0003\u0004"], "all.zip"),
      new File(['{"format":"stopfit-reply","version":1}'], "reply.txt"),
    ];
    const end = await runImport(sourcesOfFiles(files), surroundings(store));
    expect(end).toMatchObject({ taken: 5, added: 1, refusedCount: 4 });
    expect(end.refused.map(({ name }) => name).sort()).toEqual([
      "all.zip",
      "cut.json",
      "empty.json",
      "reply.txt",
    ]);
    for (const { sentence } of end.refused) expect(inModelUnits(sentence)).toMatch(/\.$/);
  });

  it("takes nothing of a backup in, whatever its name: it is handed on to be looked at", async () => {
    const store = await open();
    const decision = { key: "d", checkId: "c", submission: "s", kind: "accept", by: "A", note: "" };
    const text = [
      backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" }),
      `${JSON.stringify({ kind: "decision", decision: { ...decision, at: "2099-01-01T00:00:00Z" } })}\n`,
      backupLineText({ kind: "end", lines: 1 }),
    ].join("");
    const around = surroundings(store);
    const good = JSON.stringify(records[0]);
    const files = [new File([text], "kept.txt"), new File([good], "good.json")];
    const end = await runImport(sourcesOfFiles(files), around);
    expect(around.backups.map(({ name }) => name)).toEqual(["kept.txt"]);
    expect(end).toMatchObject({ taken: 2, added: 1, refusedCount: 1, state: "ended" });
    expect(inModelUnits(end.refused[0]?.sentence ?? [])).toMatch(/is a backup/);
    expect(value(await store.decisions())).toEqual([]);
  });

  it("refuses a backup that an earlier version had put away to restore by itself", async () => {
    const store = await open();
    const begun = value(await store.inbox.begin());
    const entry = { importKey: begun.key, place: 0, name: "old.txt", what: "The file “old.txt”" };
    value(await store.inbox.put([{ ...entry, way: "file" }]));
    const staged = { ...begun, stage: "taking" as const, total: 1 };
    value(await store.inbox.note(staged));
    const end = await resumeImport(staged, surroundings(store));
    expect(end).toMatchObject({ state: "ended", added: 0, refusedCount: 1 });
    expect(value(await store.inbox.begun())).toEqual([]);
  });
});

describe("versions that come together", () => {
  const [one] = records;
  const first = { ...(one as CheckRecord), notes: "first" };
  const second = { ...(one as CheckRecord), notes: "second" };
  const fileOf = (record: CheckRecord, day: number) =>
    new File([JSON.stringify(record)], `${record.notes}.json`, {
      lastModified: Date.UTC(2026, 4, day),
    });
  async function newest(files: readonly File[]): Promise<string> {
    vi.stubGlobal("indexedDB", new IDBFactory());
    const store = await open();
    await runImport(sourcesOfFiles(files), surroundings(store));
    const [check] = deskChecks(value(await store.submissions()), []);
    const text = value(await store.text(check?.latest.key ?? "")) ?? "{}";
    return (JSON.parse(text) as CheckRecord).notes ?? "";
  }

  it("stand in the order of their files' times, in whatever order they are read", async () => {
    expect(await newest([fileOf(first, 1), fileOf(second, 2)])).toBe("second");
    expect(await newest([fileOf(second, 2), fileOf(first, 1)])).toBe("second");
  });

  it("of one time stand in the order given", async () => {
    expect(await newest([fileOf(first, 1), fileOf(second, 1)])).toBe("second");
    expect(await newest([fileOf(second, 1), fileOf(first, 1)])).toBe("first");
  });
});
