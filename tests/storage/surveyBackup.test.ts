import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { fail, type Outcome } from "../../src/physics/outcome.ts";
import type { BackupLine } from "../../src/records/backup/backupLine.ts";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import type { CheckStore } from "../../src/storage/checkStore.ts";
import { MarkStore } from "../../src/storage/markStore.ts";
import { type BackupSurvey, phoneMark, surveyBackup } from "../../src/storage/surveyBackup.ts";
import {
  backupOf,
  decisionOf,
  desk,
  incomingOf,
  readLines,
  sentText,
  submissionLine,
} from "./support/backups.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const typed = (stored: StoredCheck, text: string, id = "left.gap") =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1" });
const at = (stored: StoredCheck, updatedAt: string, revision: number): StoredCheck => ({
  ...stored,
  updatedAt,
  revision,
});
const monday = "2025-05-05T08:00:00.000Z";
const tuesday = "2025-05-06T08:00:00.000Z";
const line = (check: StoredCheck): BackupLine => ({ kind: "check", check });
const decisionLine = (key: string): BackupLine => ({ kind: "decision", decision: decisionOf(key) });
const fault = (code: string) => fail<never>(code, ["It does not answer."]);
const codeOf = (outcome: Outcome<unknown>) => (outcome.ok ? "" : outcome.fault.code);

async function looked(checks: CheckStore, file: Blob, signal?: AbortSignal) {
  const here = await desk();
  const asked = signal ?? new AbortController().signal;
  return surveyBackup(file, { desk: here, checks, readLines, signal: asked });
}

async function survey(checks: CheckStore, file: Blob): Promise<BackupSurvey> {
  const found = value(await looked(checks, file));
  if (found === null) throw new Error("stopped");
  return found;
}

describe("a look into a backup", () => {
  it("tells checks by their names: those not here, those replaced, those filled in; and counts the same", async () => {
    const checks = await tab();
    const [same, lacking, other] = ["Same", "Lacking", "Other"].map((name) =>
      at(typed(newStoredCheck(name), "21"), monday, 1),
    ) as [StoredCheck, StoredCheck, StoredCheck];
    for (const stored of [same, lacking, other]) value(await checks.put(stored));
    const renamed = { ...typed(other, "25"), name: "Other, renamed" };
    const file = backupOf([
      line(same),
      line(at(typed(lacking, "30", "right.gap"), monday, 9)),
      line(at(renamed, tuesday, 9)),
      line(newStoredCheck("Marlow")),
      line(newStoredCheck("")),
    ]);
    expect(await survey(checks, file)).toEqual({
      createdAt: "2025-05-02T10:00:00.000Z",
      madeHere: false,
      checks: {
        added: ["Marlow", { code: "records/check.noNameYet" }],
        replaced: ["Other"],
        filled: ["Lacking"],
        present: 1,
      },
      submissions: { added: 0, present: 0 },
      decisions: { added: 0, present: 0 },
      fault: null,
    });
  });

  it("knows this phone's own by its mark, and then goes by the count of writes", async () => {
    const checks = await tab();
    const bay = at(typed(newStoredCheck("Bay"), "21"), monday, 1);
    value(await checks.put(bay));
    value(await checks.put(at(typed(bay, "22"), monday, 1)));
    const lines = [line(at(typed(bay, "25"), tuesday, 1))];
    const phone = (await phoneMark()) ?? "";
    expect(phone).not.toBe("");
    const own = await survey(checks, backupOf(lines, { phone }));
    expect([own.madeHere, own.checks.present]).toEqual([true, 1]);
    const foreign = await survey(checks, backupOf(lines, { phone: "another" }));
    expect([foreign.madeHere, foreign.checks.replaced]).toEqual([false, ["Bay"]]);
    const unsaid = await survey(checks, backupOf(lines));
    expect(unsaid.madeHere).toBe(false);
  });

  it("counts what is for the desk once each, however often it is in it", async () => {
    const here = await desk();
    value(await here.add([incomingOf(sentText(1)), incomingOf(sentText(2))]));
    value(await here.decide([decisionOf("d1")]));
    const found = await survey(
      await tab(),
      backupOf([
        submissionLine(sentText(1)),
        submissionLine(sentText(2)),
        submissionLine(sentText(3)),
        submissionLine(sentText(3)),
        decisionLine("d1"),
        decisionLine("d2"),
        decisionLine("d3"),
        decisionLine("d2"),
      ]),
    );
    expect(found.submissions).toEqual({ added: 1, present: 2 });
    expect(found.decisions).toEqual({ added: 2, present: 1 });
    expect(found.checks).toEqual({ added: [], replaced: [], filled: [], present: 0 });
  });

  it("says what is wrong with it beside what it holds", async () => {
    const found = await survey(
      await tab(),
      backupOf([line(newStoredCheck("Marlow"))], { announced: 3 }),
    );
    expect(found.fault?.code).toBe("backupCut");
    expect(found.checks.added).toEqual(["Marlow"]);
  });

  it("ends with nothing where it was stopped, and with a fault where it is none or can't be held against what is here", async () => {
    const checks = await tab();
    const file = backupOf([line(newStoredCheck("Marlow"))]);
    const stopped = new AbortController();
    stopped.abort();
    expect(await looked(checks, file, stopped.signal)).toEqual({ ok: true, value: null });
    expect(codeOf(await looked(checks, new Blob(["x"])))).toBe("notABackup");
    vi.spyOn(checks, "get").mockResolvedValue(fault("checkFault"));
    expect(codeOf(await looked(checks, file))).toBe("checkFault");
    const silent = { keys: async () => fault("deskFault") };
    const { signal } = new AbortController();
    const unheld = await surveyBackup(file, { desk: silent, checks, readLines, signal });
    expect(codeOf(unheld)).toBe("deskFault");
  });
});

describe("the mark of this phone", () => {
  it("is one and the same, and none where the storage does not say", async () => {
    const mark = await phoneMark();
    expect(mark).toMatch(/^[0-9a-f-]{36}$/);
    expect(await phoneMark()).toBe(mark);
    vi.spyOn(MarkStore.prototype, "phone").mockResolvedValue(fault("storeFailed"));
    expect(await phoneMark()).toBeNull();
  });
});
