import { describe, expect, it } from "vitest";
import {
  type BackupLine,
  backupLineText,
  looksLikeBackup,
  readBackupLine,
} from "../../../src/records/backup/backupLine.ts";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const at = "2026-05-02T10:00:00.000Z";
const header: BackupLine = { kind: "header", createdAt: at, phone: "p1" };
const decision: Decision = {
  key: "d1",
  checkId: "c1",
  submission: "s1",
  kind: "accept",
  by: "M. Lind",
  at,
  note: "",
};
const submission: BackupLine = {
  kind: "submission",
  text: "{}",
  receivedAt: at,
  way: "file",
  photosLeftOut: 0,
};

function read(line: unknown, number = 3) {
  return readBackupLine(typeof line === "string" ? line : JSON.stringify(line), number);
}

function lineOf(line: unknown): BackupLine {
  const outcome = read(line);
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}

/** Code and sentence of what can't be read. */
function refusal(line: unknown, number?: number): string {
  const outcome = read(line, number);
  return outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
}

describe("a line of a backup", () => {
  it("is written as one line of JSON, the header with format and version", () => {
    expect(backupLineText(header)).toBe(
      `{"format":"stopfit-backup","version":1,"kind":"header","createdAt":"${at}","phone":"p1"}\n`,
    );
    expect(backupLineText({ kind: "end", lines: 4 })).toBe('{"kind":"end","lines":4}\n');
  });

  it("reads back as what was written, nothing added, and no field that was absent is there", () => {
    expect(lineOf(backupLineText(header))).toEqual(header);
    const older = lineOf(backupLineText({ kind: "header", createdAt: at }));
    expect(Object.keys(older).sort()).toEqual(["createdAt", "kind"]);
    expect(lineOf({ kind: "end", lines: 0 })).toEqual({ kind: "end", lines: 0 });
    for (const kind of ["accept", "askAgain", "otherPart", "undo"] as const) {
      expect(lineOf({ kind: "decision", decision: { ...decision, kind } })).toEqual({
        kind: "decision",
        decision: { ...decision, kind },
      });
    }
    const bare = lineOf({ kind: "decision", decision });
    expect(bare.kind === "decision" && Object.keys(bare.decision)).toEqual(Object.keys(decision));
    for (const way of ["file", "link", "code", "backup", "desk"] as const) {
      const whole = { ...submission, way, place: 2, sentAt: at };
      expect(lineOf(whole)).toEqual(whole);
    }
    expect(Object.keys(lineOf(submission))).not.toContain("sentAt");
  });

  it("a check is read in today's shape, with its own dates", () => {
    const stored = newStoredCheck("Tern");
    const line = lineOf({ kind: "check", check: stored });
    expect(line.kind === "check" && line.check).toEqual(stored);
    expect(line.kind === "check" && "deletedAt" in line.check).toBe(false);
    const gone = { ...stored, deletedAt: stored.updatedAt };
    const deleted = lineOf({ kind: "check", check: gone });
    expect(deleted.kind === "check" && deleted.check.deletedAt).toBe(stored.updatedAt);
  });

  it.each([
    ["no JSON", "x"],
    ["none of the kinds", { kind: "else" }],
    ["a list", []],
    ["a check without an id", { kind: "check", check: { record: {} } }],
    ["a check without a record", { kind: "check", check: { id: "a" } }],
    ["a check whose id is no text", { kind: "check", check: { id: 5, record: {} } }],
    ["a check whose id is empty", { kind: "check", check: { id: "", record: {} } }],
    ["a check whose id is too long", { kind: "check", check: { id: "a".repeat(201), record: {} } }],
    ["a decision of no kind", { kind: "decision", decision: { ...decision, kind: "" } }],
    ["a decision without a key", { kind: "decision", decision: { ...decision, key: "" } }],
    ["a decision whose date is none", { kind: "decision", decision: { ...decision, at: "x" } }],
    ["a date after other words", { ...submission, receivedAt: `x${at}` }],
    ["a date before other words", { ...submission, receivedAt: `${at} or so` }],
    ["a date of no month", { ...submission, receivedAt: "2026-13-02T10:00:00.000Z" }],
    ["a submission that came no way", { ...submission, way: "" }],
    ["a submission with half a photo left out", { ...submission, photosLeftOut: 0.5 }],
    ["a submission with less than none", { ...submission, photosLeftOut: -1 }],
    ["an end with less than no lines", { kind: "end", lines: -1 }],
  ])("with %s can't be read, and is told by its number", (_name, line) => {
    expect(refusal(line, 7)).toBe(
      "backupDamaged: Line 7 of the backup can't be read. What stands before and after it can be restored.",
    );
  });

  it("of version 2 on is of a newer Stopfit, and says which; of version 0 none", () => {
    const line = (version: number) =>
      backupLineText(header).replace('"version":1', `"version":${version}`);
    expect(refusal(line(2))).toBe(
      "backupNewer: The backup was made by a newer version of Stopfit (backup version 2). Update Stopfit, then restore it again.",
    );
    expect(refusal(line(0))).toMatch(/^backupDamaged/);
    expect(refusal(line(1))).toBe("");
  });

  it("no date of it lies ahead: a check's counts as its beginning, others as now", () => {
    const ahead = "9999-01-01T00:00:00.000Z";
    const now = Date.now();
    const near = (moment: string | undefined) => Math.abs(Date.parse(moment ?? "") - now) < 60_000;
    const told = lineOf(backupLineText({ ...header, createdAt: ahead }));
    expect(told.kind === "header" && near(told.createdAt)).toBe(true);
    const sent = lineOf({ ...submission, receivedAt: ahead, sentAt: ahead });
    expect(sent.kind === "submission" && near(sent.receivedAt) && near(sent.sentAt)).toBe(true);
    const decided = lineOf({ kind: "decision", decision: { ...decision, at: ahead } });
    expect(decided.kind === "decision" && near(decided.decision.at)).toBe(true);
    const stored = { ...newStoredCheck("Tern"), createdAt: at, updatedAt: ahead, deletedAt: ahead };
    const check = lineOf({ kind: "check", check: stored });
    expect(check.kind === "check" && check.check).toMatchObject({ createdAt: at, updatedAt: at });
    expect(check.kind === "check" && "deletedAt" in check.check).toBe(false);
    const never = lineOf({ kind: "check", check: { ...stored, createdAt: ahead } });
    expect(never.kind === "check" && never.check.updatedAt).toBe("1970-01-01T00:00:00.000Z");
    const odd = lineOf({ kind: "check", check: { ...stored, updatedAt: 5e8 } });
    expect(odd.kind === "check" && odd.check.updatedAt).toBe(at);
  });
});

describe("a backup", () => {
  it("is told by its beginning alone, after a mark of its bytes and some spaces at most", () => {
    const begin = '{"format":"stopfit-backup","version":1';
    expect(looksLikeBackup(begin)).toBe(true);
    expect(looksLikeBackup(`\ufeff \n${begin}`)).toBe(true);
    expect(looksLikeBackup(`${" ".repeat(100)}${begin}`)).toBe(true);
    expect(looksLikeBackup(`${" ".repeat(101)}${begin}`)).toBe(false);
    expect(looksLikeBackup(`x${begin}`)).toBe(false);
    expect(looksLikeBackup('{"format":"stopfit-check"')).toBe(false);
  });
});
