import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { fail, type Outcome } from "../../src/physics/outcome.ts";
import type { BackupLine } from "../../src/records/backup/backupLine.ts";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import type { CheckStore } from "../../src/storage/checkStore.ts";
import type { DeskStore } from "../../src/storage/deskStore.ts";
import {
  type RestoreCounts,
  type RestoreReceipt,
  restoreBackup,
  undoRestore,
} from "../../src/storage/restoreBackup.ts";
import {
  backupOf,
  decisionOf,
  desk,
  readLines,
  sentText,
  submissionLine,
} from "./support/backups.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const monday = "2025-05-05T08:00:00.000Z";
const tuesday = "2025-05-06T08:00:00.000Z";
const typed = (stored: StoredCheck, text: string, id = "left.gap") =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1" });
const at = (stored: StoredCheck, updatedAt: string): StoredCheck => ({ ...stored, updatedAt });
const bay = at(newStoredCheck("Bay 1"), monday);
const tern = at(newStoredCheck("Tern"), monday);
const line = (check: StoredCheck): BackupLine => ({ kind: "check", check });
const decisionLine = (key: string): BackupLine => ({
  kind: "decision",
  decision: decisionOf(key),
});
const fault = (code: string) => fail<never>(code, ["It does not answer."]);
const codeOf = (outcome: Outcome<unknown>) => (outcome.ok ? "" : outcome.fault.code);
const gapOf = (stored: StoredCheck | null) => stored?.entries["left.gap"]?.texts[0];
const nothingWritten: RestoreReceipt = {
  addedChecks: [],
  joinedChecks: [],
  submissions: [],
  decisions: [],
};

interface Place {
  readonly checks: CheckStore;
  readonly desk: DeskStore;
}

async function phone(...here: readonly StoredCheck[]): Promise<Place> {
  const place = { checks: await tab(), desk: await desk() };
  for (const stored of here) value(await place.checks.put(stored));
  return place;
}

async function restored(place: Place, file: Blob, withDecisions = true, signal?: AbortSignal) {
  const told: RestoreCounts[] = [];
  const done = await restoreBackup(file, {
    ...place,
    readLines,
    withDecisions,
    onCounts: (counts) => told.push(counts),
    signal: signal ?? new AbortController().signal,
  });
  return { ...done, told };
}

describe("what a restore tells", () => {
  it("is counted as it goes on: what was added, was here already, or was joined", async () => {
    const place = await phone(bay, tern);
    const file = backupOf([
      line(bay),
      line(at(typed(tern, "21"), tuesday)),
      line(at(newStoredCheck("Osprey"), monday)),
      submissionLine(sentText(1)),
      decisionLine("d1"),
    ]);
    const first = await restored(place, file);
    expect(first.told).toEqual([
      { added: 0, present: 1, joined: 0 },
      { added: 1, present: 1, joined: 1 },
      { added: 2, present: 1, joined: 1 },
      { added: 4, present: 1, joined: 1 },
    ]);
    expect(first.counts).toEqual(first.told.at(-1));
    expect(first.fault).toBeNull();
    const again = await restored(place, file);
    expect(again.counts).toEqual({ added: 0, present: 5, joined: 0 });
    expect(again.receipt).toEqual(nothingWritten);
  });

  it("holds decisions that nobody wanted neither among those added nor those present", async () => {
    const place = await phone();
    const { counts, receipt } = await restored(place, backupOf([decisionLine("d1")]), false);
    expect(counts).toEqual({ added: 0, present: 0, joined: 0 });
    expect(receipt).toEqual(nothingWritten);
    expect(value(await place.desk.decisions())).toEqual([]);
  });

  it("has what was written, by which it is undone", async () => {
    const place = await phone(bay, tern);
    const osprey = at(typed(newStoredCheck("Osprey"), "30"), tuesday);
    const { receipt } = await restored(
      place,
      backupOf([
        line(at(typed(bay, "21"), tuesday)),
        line(osprey),
        submissionLine(sentText(1)),
        decisionLine("d1"),
      ]),
    );
    const [submission] = value(await place.desk.submissions());
    expect(receipt).toEqual({
      addedChecks: [{ id: osprey.id, updatedAt: tuesday }],
      joinedChecks: [{ before: { ...bay, revision: 1 }, aside: null }],
      submissions: [submission?.key],
      decisions: ["d1"],
    });
  });

  it("is what the backup knew of a submission, to the last field", async () => {
    const place = await phone();
    const whence = {
      receivedAt: "2025-05-01T10:00:00.000Z",
      sentAt: "2025-04-30T10:00:00.000Z",
      from: "workshop",
      place: 3,
      way: "link",
      photosLeftOut: 2,
    } as const;
    await restored(place, backupOf([{ kind: "submission", text: sentText(1), ...whence }]));
    const [submission] = value(await place.desk.submissions());
    expect(submission).toMatchObject({ ...whence, isComputed: 0 });
  });

  it("marks decisions by when they were restored", async () => {
    const place = await phone();
    const before = new Date().toISOString();
    await restored(place, backupOf([decisionLine("d1")]));
    const [decision] = value(await place.desk.decisions());
    expect(decision).toEqual({ ...decisionOf("d1"), fromBackup: decision?.fromBackup });
    const moment = decision?.fromBackup ?? "";
    expect(moment >= before && moment <= new Date().toISOString()).toBe(true);
  });
});

describe("a long backup", () => {
  it("is kept by the hundred, so that what ends early has kept what it read", async () => {
    const place = await phone();
    const many = Array.from({ length: 130 }, (_, number) =>
      number % 2 === 0 ? submissionLine(sentText(number)) : decisionLine(`d${number}`),
    );
    const { told } = await restored(place, backupOf(many));
    expect(told.map(({ added }) => added)).toEqual([100, 130]);
    expect(value(await place.desk.submissions())).toHaveLength(65);
    expect(value(await place.desk.decisions())).toHaveLength(65);
  });

  it("that is stopped keeps what was read of it until then, and that is no fault", async () => {
    const place = await phone();
    const controller = new AbortController();
    const takeIn = place.checks.takeIn.bind(place.checks);
    vi.spyOn(place.checks, "takeIn").mockImplementation((backup, join) => {
      controller.abort();
      return takeIn(backup, join);
    });
    const done = await restored(
      place,
      backupOf([submissionLine(sentText(1)), line(bay), line(tern)]),
      true,
      controller.signal,
    );
    expect(done.fault).toBeNull();
    expect(done.counts).toEqual({ added: 2, present: 0, joined: 0 });
    expect(value(await place.checks.list()).map(({ name }) => name)).toEqual(["Bay 1"]);
    expect(value(await place.desk.submissions())).toHaveLength(1);
  });
});

describe("a restore that fails", () => {
  it("says what is wrong with the backup, and keeps what could be read", async () => {
    const place = await phone();
    const cut = await restored(place, backupOf([submissionLine(sentText(1))], { announced: 2 }));
    expect(cut.fault?.code).toBe("backupCut");
    expect(cut.counts.added).toBe(1);
    expect(value(await place.desk.submissions())).toHaveLength(1);
    expect((await restored(place, new Blob(["x"]))).fault?.code).toBe("notABackup");
  });

  it("where the desk keeps nothing says so, with no count of what was not kept", async () => {
    const place = await phone();
    const file = backupOf([submissionLine(sentText(1)), decisionLine("d1")]);
    vi.spyOn(place.desk, "decide").mockResolvedValue(fault("decideFault"));
    const undecided = await restored(place, file);
    expect(undecided.fault?.code).toBe("decideFault");
    expect(undecided.receipt.submissions).toHaveLength(1);
    expect(undecided.receipt.decisions).toEqual([]);
    vi.spyOn(place.desk, "add").mockResolvedValue(fault("addFault"));
    const unkept = await restored(place, file);
    expect(unkept.fault?.code).toBe("addFault");
    expect([unkept.told, unkept.receipt]).toEqual([[], nothingWritten]);
  });

  it("at a check says so, reads no further, and has kept what the desk had before", async () => {
    const place = await phone();
    vi.spyOn(place.checks, "takeIn").mockResolvedValue(fault("storeFull"));
    const { fault: told, counts } = await restored(
      place,
      backupOf([submissionLine(sentText(1)), line(bay), submissionLine(sentText(2))]),
    );
    expect(told?.code).toBe("storeFull");
    expect(counts).toEqual({ added: 1, present: 0, joined: 0 });
    expect(value(await place.desk.submissions())).toHaveLength(1);
  });

  it("as a hundred are kept says so as well, before all that follows", async () => {
    const place = await phone();
    const many = Array.from({ length: 100 }, (_, number) => submissionLine(sentText(number)));
    vi.spyOn(place.desk, "add").mockResolvedValue(fault("addFault"));
    const done = await restored(place, backupOf([...many, line(bay)]));
    expect(done.fault?.code).toBe("addFault");
    expect(value(await place.checks.list())).toEqual([]);
  });
});

describe("a restore that is taken back", () => {
  it("leaves what was here, one version later, and no copy of what it had replaced", async () => {
    const place = await phone(at(typed(bay, "21"), monday), tern);
    const { receipt } = await restored(
      place,
      backupOf([line(at(typed(bay, "25"), tuesday)), line(at(typed(tern, "9"), tuesday))]),
    );
    expect(receipt.joinedChecks.map(({ aside }) => typeof aside)).toEqual(["string", "object"]);
    const before = receipt.joinedChecks.map(({ before: check }) => check);
    value(await undoRestore(receipt, place));
    for (const check of before) {
      const back = value(await place.checks.get(check.id));
      expect(back).toEqual({ ...check, revision: 3 });
    }
    expect(value(await place.checks.list("deleted"))).toEqual([]);
  });

  it("of a backup that has a check twice leaves it as it was before both", async () => {
    const place = await phone(bay);
    const { receipt } = await restored(
      place,
      backupOf([
        line(at(typed(bay, "25"), tuesday)),
        line(at(typed(typed(bay, "26"), "512", "left.rideHeight"), "2025-05-07T08:00:00.000Z")),
      ]),
    );
    expect(receipt.joinedChecks).toHaveLength(2);
    value(await undoRestore(receipt, place));
    expect(value(await place.checks.get(bay.id))?.entries).toEqual({});
    expect(value(await place.checks.list("deleted"))).toEqual([]);
  });

  it("takes away what it had added, but what was gone on with can be brought back", async () => {
    const place = await phone();
    const gone = newStoredCheck("Gone");
    const { receipt } = await restored(place, backupOf([line(gone), line(bay), line(tern)]));
    value(await place.checks.discard(gone.id));
    const here = value(await place.checks.get(tern.id)) as StoredCheck;
    value(await place.checks.put(typed(here, "21")));
    value(await undoRestore(receipt, place));
    expect(value(await place.checks.list())).toEqual([]);
    const deleted = value(await place.checks.list("deleted"));
    expect(deleted.map(({ name }) => name)).toEqual(["Tern"]);
    expect(gapOf(value(await place.checks.get(tern.id)))).toBe("21");
  });

  it("leaves the desk without what it had added, and with all else", async () => {
    const place = await phone();
    await restored(place, backupOf([submissionLine(sentText(1)), decisionLine("d1")]));
    const { receipt } = await restored(
      place,
      backupOf([
        submissionLine(sentText(1)),
        submissionLine(sentText(2)),
        decisionLine("d1"),
        decisionLine("d2"),
      ]),
    );
    value(await undoRestore(receipt, place));
    expect(value(await place.desk.submissions())).toHaveLength(1);
    expect(value(await place.desk.decisions()).map(({ key }) => key)).toEqual(["d1"]);
  });

  it("says so where any part of it can't be taken back", async () => {
    const place = await phone(at(typed(bay, "21"), monday));
    const { receipt } = await restored(
      place,
      backupOf([line(at(typed(bay, "25"), tuesday)), line(tern)]),
    );
    const undoing = async (what: "update" | "discard" | "get" | "remove", wrote = receipt) => {
      const spy = vi.spyOn(place.checks, what).mockResolvedValue(fault(`${what}Fault`));
      const done = codeOf(await undoRestore(wrote, place));
      spy.mockRestore();
      return done;
    };
    expect(await undoing("update")).toBe("updateFault");
    expect(await undoing("discard", { ...receipt, addedChecks: [] })).toBe("discardFault");
    expect(await undoing("discard", { ...receipt, joinedChecks: [] })).toBe("discardFault");
    expect(await undoing("get")).toBe("getFault");
    const here = value(await place.checks.get(tern.id)) as StoredCheck;
    value(await place.checks.put(typed(here, "7")));
    expect(await undoing("remove")).toBe("removeFault");
    vi.spyOn(place.desk, "takeOut").mockResolvedValue(fault("deskFault"));
    expect(codeOf(await undoRestore(receipt, place))).toBe("deskFault");
  });
});
