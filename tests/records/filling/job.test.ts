import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/records/check/checkRecord.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { openStored } from "../../../src/records/check/openStored.ts";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { checkAgain, withFitted } from "../../../src/records/filling/fitted.ts";
import {
  counterpartOf,
  factsOfJob,
  jobOf,
  otherAxle,
  othersOfJob,
  withJob,
  withJobFacts,
} from "../../../src/records/filling/job.ts";
import { withPlatform } from "../../../src/records/filling/platforms.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const front = storedFromRecord(demoRecord("arm-fits"));
const fitted = withFitted(
  front,
  { partNumber: "HL-1052", by: "Ada", day: "2026-05-31" },
  "mm",
  inModelUnits,
);

function inJob(job: Job, more: Partial<StoredCheck> = {}): StoredCheck {
  return { ...withJob(newStoredCheck(), job), ...more };
}

describe("the other axle", () => {
  it("is a new check of the same vehicle and job, with nothing measured on it", () => {
    const { first, other } = otherAxle(front, demoPack, inModelUnits);
    expect(first.record.job?.id).toBeTruthy();
    expect(other.record.job).toEqual(first.record.job);
    expect(other.id).not.toBe(front.id);
    expect(other.name).toBe(front.name);
    expect(other.record.axle).toBe("rear");
    expect(other.record.vehicle).toMatchObject({
      label: front.record.vehicle?.label,
      use: front.record.vehicle?.use,
    });
    expect(other.record.author).toEqual(front.record.author);
    expect(other.record.corners.map(({ side }) => side)).toEqual(["left", "right"]);
    for (const corner of other.record.corners)
      expect(corner).toEqual({ side: corner.side, limits: [] });
    const { layout, stop, ride, photos } = other.record;
    expect([layout, stop, ride, photos]).toEqual([undefined, undefined, undefined, undefined]);
    expect(other.progress).toMatchObject({ cautionsFor: null, stood: [], step: "" });
    expect(completeRecord(other).ok).toBe(false);
  });

  it("has the requirements that were set, and only the side that was measured", () => {
    const demanding = setEntry(front, "rules.reserveMm", { texts: ["14"], unit: "mm", tol: "" });
    const { other } = otherAxle(withSides(demanding, "left"), demoPack, inModelUnits);
    expect(other.record.rules?.reserveMm).toBe(14);
    expect(other.entries["rules.reserveMm"]?.texts).toEqual(["14"]);
    expect(other.record.corners.map(({ side }) => side)).toEqual(["left"]);
  });

  it("is on the library's vehicle of that axle, where the first one is on one", () => {
    const platform = demoPack.platforms.find(({ id }) => id === "marlow-utility-front") ?? null;
    const { other } = otherAxle(withPlatform(front, platform, demoPack), demoPack, inModelUnits);
    expect(other.record.vehicle?.platformId).toBe("marlow-utility-rear");
    expect(other.record.reference?.platform?.axle).toBe("rear");
    expect(otherAxle(front, demoPack, inModelUnits).other.record.vehicle?.platformId).toBeNull();
  });

  it("of the other axle is in the same job again", () => {
    const { first, other } = otherAxle(front, demoPack, inModelUnits);
    const back = otherAxle(other, demoPack, inModelUnits);
    expect(back.first).toBe(other);
    expect(back.other.record.job).toEqual(first.record.job);
    expect(back.other.record.axle).toBe("front");
  });
});

describe("the job of a check", () => {
  it("is the one it has, or a new one called as the vehicle", () => {
    const job: Job = { id: "j", label: "Brant", moment: "after" };
    expect(jobOf(inJob(job), inModelUnits)).toBe(job);
    expect(jobOf(front, inModelUnits).label).toBe(front.record.vehicle?.label);
    expect(jobOf(newStoredCheck("Tern, blue"), inModelUnits).label).toBe("Tern, blue");
    expect(jobOf(newStoredCheck(), inModelUnits).label).toBe("Vehicle");
  });

  it("has no empty number or customer, and leaves before and after to the check", () => {
    const facts = factsOfJob({ id: "j", label: " Brant ", number: " ", customer: " I. Farrow" });
    expect(facts).toEqual({ id: "j", label: "Brant", customer: "I. Farrow" });
    const before = withJobFacts(inJob({ id: "j", label: "x", moment: "before" }), facts);
    expect(before.record.job).toEqual({ ...facts, moment: "before" });
    expect(withJob(before, undefined).record).not.toHaveProperty("job");
  });

  it("stays through what a phone stores", () => {
    const text = fc.string({ minLength: 1, maxLength: 40 }).filter((each) => each.trim() !== "");
    fc.assert(
      fc.property(
        text,
        text,
        fc.constantFrom("before" as const, "after" as const),
        (label, number, moment) => {
          const stored = inJob({ ...factsOfJob({ id: "j", label, number }), moment });
          const again = openStored(JSON.parse(JSON.stringify(stored)));
          expect(again?.record.job).toEqual(stored.record.job);
        },
      ),
    );
  });
});

describe("before and after", () => {
  const { before, after } = checkAgain(fitted, demoPack, "mm", inModelUnits);

  it("find each other, on the same axle of the same job alone", () => {
    const { first, other } = otherAxle(before, demoPack, inModelUnits);
    const all = [first, after, other, front, newStoredCheck()];
    expect(othersOfJob(before, all).map(({ id }) => id)).toEqual([after.id, other.id]);
    expect(counterpartOf(before, all)?.id).toBe(after.id);
    expect(counterpartOf(after, all)?.id).toBe(before.id);
    expect(counterpartOf(other, all)).toBeNull();
    expect(counterpartOf(front, all)).toBeNull();
    const elsewhere = withJob(after, { id: "another", label: "x", moment: "after" });
    expect(counterpartOf(before, [elsewhere])).toBeNull();
  });

  it("of several are the ones next to each other in time", () => {
    const at = (moment: "before" | "after", createdAt: string) => ({
      ...changeRecord(inJob({ id: "j", label: "Brant", moment }), (record) => ({
        ...record,
        axle: "rear" as const,
      })),
      createdAt,
    });
    const [first, second] = [
      at("before", "2026-05-01T09:00:00Z"),
      at("before", "2026-05-03T09:00:00Z"),
    ];
    const [third, fourth] = [
      at("after", "2026-05-05T09:00:00Z"),
      at("after", "2026-05-07T09:00:00Z"),
    ];
    const all = [third, first, fourth, second];
    expect(counterpartOf(fourth, all)?.id).toBe(second.id);
    expect(counterpartOf(second, all)?.id).toBe(third.id);
    // A clock set wrongly parts no pair.
    expect(counterpartOf(at("after", "2026-04-01T09:00:00Z"), all)?.id).toBe(second.id);
  });
});
