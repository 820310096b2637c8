import type { Assessment } from "../../../src/physics/fitment.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import { factsOf, type Incoming } from "../../../src/records/review/submission.ts";
import { type DeskStore, openDeskStore } from "../../../src/storage/deskStore.ts";
import { generateRecords } from "../../support/generateRecords.ts";
import { closedLater, value } from "./tabs.ts";

/** One tab of the desk: a store of its own on the same database. */
export async function desk(): Promise<DeskStore> {
  return closedLater(value(await openDeskStore()));
}

const records: readonly CheckRecord[] = [...generateRecords(5)];

/** The same five every time. */
export function recordAt(index: number): CheckRecord {
  const record = records[index];
  if (record === undefined) throw new Error("no record");
  return record;
}

export const keyOf = (record: CheckRecord): string => `${record.id} ${factsOf(record).digest}`;

export function incoming(record: CheckRecord, text = JSON.stringify(record)): Incoming {
  return { facts: factsOf(record), text, way: "file", photosLeftOut: 0 };
}

/** All five, as they came by files, in the order in which the database has them. */
export const allIncoming: readonly Incoming[] = records
  .map((record) => incoming(record))
  .sort((a, b) => (a.facts.checkId < b.facts.checkId ? -1 : 1));

export const keysOf = (all: readonly Incoming[]): string[] =>
  all.map(({ facts }) => `${facts.checkId} ${facts.digest}`);

export const computed = { verdict: "no", reason: ["Too low."], odd: 2 } as const;

/** An answer as far as the storage looks at one. */
export const assessment = (verdict: Assessment["verdict"]): Assessment =>
  ({ verdict, reason: ["Too low."] }) as unknown as Assessment;

export function decision(key: string, change: Partial<Decision> = {}): Decision {
  return {
    key,
    checkId: recordAt(0).id,
    submission: "one",
    kind: "accept",
    by: "M. Lind",
    at: "2026-05-03T10:00:00.000Z",
    note: "",
    ...change,
  };
}
