import { describe, expect, it } from "vitest";
import type { Axle, Job } from "../../../src/records/check/checkRecord.ts";
import { changeRecord, newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { foundIn, jobGroups } from "../../../src/screens/home/jobGroups.ts";

const job: Job = { id: "j1", label: "Brant pickup", number: "4107", customer: "I. Farrow" };

function check(name: string, axle: Axle, inJob?: Job, createdAt = "2026-05-01T09:00:00Z") {
  return {
    ...changeRecord(newStoredCheck(name), (record) => ({
      ...record,
      axle,
      stop: { name: "Tall firm", partNumber: "HL-3130" },
      ...(inJob && { job: inJob }),
    })),
    createdAt,
  };
}

const rearAfter = check("Brant, after", "rear", { ...job, moment: "after" });
const rearBefore = check("Brant, before", "rear", { ...job, moment: "before" });
const front = check("Brant, front", "front", job);
const alone = check("Tern", "front");
const all = [rearAfter, alone, rearBefore, front];

describe("the list of checks", () => {
  it("stands by jobs, the newest first, in each the front before the rear, before before after", () => {
    expect(jobGroups(all).map(({ checks }) => checks.map(({ name }) => name))).toEqual([
      ["Brant, front", "Brant, before", "Brant, after"],
      ["Tern"],
    ]);
    expect(jobGroups(all).map((group) => group.job?.id ?? null)).toEqual(["j1", null]);
    expect(jobGroups([])).toEqual([]);
  });

  it("loses none, whichever jobs they are in", () => {
    const many = Array.from({ length: 40 }, (_, i) =>
      check(`${i}`, i % 2 ? "front" : "rear", i % 3 ? { id: `j${i % 5}`, label: "x" } : undefined),
    );
    const grouped = jobGroups(many).flatMap(({ checks }) => checks);
    expect(new Set(grouped)).toEqual(new Set(many));
    expect(grouped).toHaveLength(many.length);
  });

  it("is searched by name, job, customer, axle, part and date, all words at once", () => {
    const names = (words: string) => foundIn(all, words).map(({ name }) => name);
    expect(names("")).toHaveLength(4);
    expect(names("tern")).toEqual(["Tern"]);
    expect(names("farrow rear")).toEqual(["Brant, after", "Brant, before"]);
    expect(names("4107 FRONT")).toEqual(["Brant, front"]);
    expect(names("hl-3130 may 2026")).toHaveLength(4);
    expect(names("farrow tern")).toEqual([]);
  });
});
