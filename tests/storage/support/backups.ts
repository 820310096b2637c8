import { poolAnswer, poolWork } from "../../../src/compute/poolWork.ts";
import { fail } from "../../../src/physics/outcome.ts";
import { type BackupLine, backupLineText } from "../../../src/records/backup/backupLine.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import type { Incoming } from "../../../src/records/review/submission.ts";
import type { ReadLines } from "../../../src/storage/backupPass.ts";
import { type DeskStore, openDeskStore } from "../../../src/storage/deskStore.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { closedLater, value } from "./tabs.ts";

export const readLines: ReadLines = async (lines, first) => {
  const done = await poolAnswer({ kind: "backupLines", lines, first });
  if (done.kind === "backupLines") return done.entries;
  return [
    done.kind === "failed" ? { ok: false, fault: done.fault } : fail("notRead", ["not read"]),
  ];
};

export async function desk(): Promise<DeskStore> {
  return closedLater(value(await openDeskStore()));
}

export function incomingOf(text: string): Incoming {
  const done = poolWork({ kind: "read", text, what: "The file", way: "file" });
  const [item] = done.kind === "read" ? done.items : [];
  return value(item ?? fail("notRead", ["not read"]));
}

/** The text of a check for the desk, each number another one. */
export function sentText(number: number): string {
  const id = `00000000-0000-4000-8000-${`${number}`.padStart(12, "0")}`;
  return JSON.stringify({ ...demoRecord("arm-fits"), id });
}

/** A submission as a backup holds it. */
export function submissionLine(text: string): BackupLine {
  const receivedAt = "2025-05-02T10:00:00.000Z";
  return { kind: "submission", text, receivedAt, way: "file", photosLeftOut: 0 };
}

export function decisionOf(key: string): Decision {
  return {
    key,
    checkId: demoRecord("arm-fits").id,
    submission: "any",
    kind: "accept",
    by: "M. Lind",
    at: "2025-05-02T10:00:00.000Z",
    note: "",
  };
}

/** A backup with these lines between its header and its end. */
export function backupOf(
  lines: readonly BackupLine[],
  header: { readonly phone?: string; readonly announced?: number } = {},
): Blob {
  const { announced = lines.length, ...said } = header;
  const createdAt = "2025-05-02T10:00:00.000Z";
  return new Blob([
    backupLineText({ kind: "header", createdAt, ...said }),
    ...lines.map(backupLineText),
    backupLineText({ kind: "end", lines: announced }),
  ]);
}
