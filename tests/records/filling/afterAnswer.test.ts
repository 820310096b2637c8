import { describe, expect, it } from "vitest";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import {
  changeFullTravel,
  contactEntryId,
  withFullTravelEntries,
} from "../../../src/records/check/fullTravel.ts";
import { openStored } from "../../../src/records/check/openStored.ts";
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import {
  checkAgain,
  fittedText,
  odometerOf,
  spacerOf,
  withFitted,
  withoutFitted,
} from "../../../src/records/filling/fitted.ts";
import {
  blindCheck,
  personDifferences,
  readingAt,
  secondReadings,
  withSecond,
} from "../../../src/records/filling/secondPerson.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { stampedBy, withFullTravelSigned } from "../../../src/records/filling/whoMeasured.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import {
  differenceStatistics,
  leastPairs,
  measuredTolerances,
} from "../../../src/records/review/repeatability.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

const stored = storedFromRecord(demoRecord("arm-fits"));
const typed = { partNumber: "HL-1052", revision: "B", batch: "2611", by: "Ada", day: "2026-05-31" };

describe("what was fitted", () => {
  it("is in the record once the part is told and everything can be read", () => {
    const fitted = withFitted(
      stored,
      { ...typed, spacer: "3/8 in", odometer: "51,200 mi" },
      "mm",
      inModelUnits,
    );
    expect(fitted.record.fitted).toEqual({
      partNumber: "HL-1052",
      revision: "B",
      batch: "2611",
      spacerMm: (3 / 8) * 25.4,
      at: "2026-05-31T12:00:00.000Z",
      by: "Ada",
      // 51 200 international miles of 1.609344 km (NIST SP 811)
      odometer: 82_398,
    });
    const whole = completeRecord(fitted);
    expect(whole.ok && readCheckValue(JSON.parse(JSON.stringify(whole.value))).ok).toBe(true);
    expect(openStored(JSON.parse(JSON.stringify(fitted)))?.record.fitted).toEqual(
      fitted.record.fitted,
    );
  });

  it("keeps what is typed while it can't be read, and loses nothing", () => {
    const fitted = withFitted(stored, typed, "mm", inModelUnits);
    const slip = withFitted(fitted, { spacer: "ten" }, "mm", inModelUnits);
    expect(slip.record.fitted).toBeUndefined();
    expect(fittedText(slip, "spacer")).toBe("ten");
    expect(fittedText(slip, "partNumber")).toBe("HL-1052");
    expect(withFitted(slip, { spacer: "10" }, "mm", inModelUnits).record.fitted?.spacerMm).toBe(10);
    expect(withoutFitted(slip)).toMatchObject({ record: stored.record });
  });

  it("reads a spacer and an odometer as they are typed", () => {
    expect(spacerOf("", "mm")).toBe(0);
    expect(spacerOf("1/2", "in")).toBeCloseTo(12.7, 12);
    expect(spacerOf("900", "mm")).toBeNull();
    expect(odometerOf("", "in")).toBeUndefined();
    expect(odometerOf("82 340 km", "in")).toBe(82_340);
    expect(odometerOf("about 5", "mm")).toBeNull();
  });
});

describe("checked again after the change", () => {
  const fitted = withFitted(stored, typed, "mm", inModelUnits);
  const { before, after } = checkAgain(fitted, demoPack, "mm", inModelUnits);

  it("takes along nothing that a second person read of the stop before", () => {
    const entry = { texts: ["21"], unit: "mm", tol: "1" } as const;
    const read = withSecond(fitted, "left.gap", entry, "Bo");
    expect(read.record.second?.readings).toHaveProperty(["left.gap"]);
    const next = checkAgain(read, demoPack, "mm", inModelUnits).after;
    expect(next.record).not.toHaveProperty("second");
    expect(Object.keys(next.entries).filter((id) => id.startsWith("second."))).toEqual([]);
  });

  it("is a new check of the same job, with the part that was fitted", () => {
    expect(after.id).not.toBe(stored.id);
    expect(before.record.job).toMatchObject({ moment: "before" });
    expect(after.record.job).toEqual({ ...before.record.job, moment: "after" });
    expect(after.record.stop).toMatchObject({ name: "Arm block", revision: "B", batch: "2611" });
    expect(after.record.fitted).toBeUndefined();
    expect(after.progress).toMatchObject({ cautionsFor: null, stood: [] });
  });

  it("has the same geometry and clearances; how it stands is measured anew", () => {
    expect(after.record.layout).toEqual(stored.record.layout);
    for (const [index, corner] of stored.record.corners.entries()) {
      const { gap: _, ...same } = corner;
      expect(after.record.corners[index]).toEqual(same);
    }
    const again = completeRecord(after);
    expect(again.ok).toBe(false);
    const gaps = ["left.gap", "right.gap"].reduce(
      (current, id) => setEntry(current, id, { texts: ["20"], unit: "mm", tol: "1" }),
      after,
    );
    expect(completeRecord(gaps).ok).toBe(true);
  });

  it("keeps the stop of the check where the pack does not have the part", () => {
    const other = withFitted(stored, { ...typed, partNumber: "X-1" }, "mm", inModelUnits);
    expect(checkAgain(other, demoPack, "mm", inModelUnits).after.record.stop).toEqual(
      stored.record.stop,
    );
  });

  it("a third one stays in the job", () => {
    const third = checkAgain(
      withFitted(after, typed, "mm", inModelUnits),
      demoPack,
      "mm",
      inModelUnits,
    );
    expect(third.after.record.job?.id).toBe(before.record.job?.id);
  });
});

describe("a second person", () => {
  const ids = secondReadings(stored);

  it("takes the readings of the vehicle, and sees none of the first one's numbers", () => {
    expect(ids).toContain("pivotToStop");
    expect(ids).toContain("left.gap");
    expect(ids.some((id) => id.startsWith("stop."))).toBe(false);
    const blind = blindCheck(stored);
    expect(blind.entries).toEqual({});
    expect(JSON.stringify(blind.record.corners)).not.toContain("values");
    expect(JSON.stringify(blind.record.layout)).not.toContain("values");
  });

  it("is kept beside the first, who and when, and goes along with the record", () => {
    const second = withSecond(stored, "left.gap", { texts: ["24"], unit: "mm", tol: "1" }, "Bo");
    expect(second.record.second).toMatchObject({
      by: "Bo",
      readings: { "left.gap": { values: [24], by: "Bo" } },
    });
    expect(second.record.corners).toEqual(stored.record.corners);
    const whole = completeRecord(second);
    expect(whole.ok && readCheckValue(JSON.parse(JSON.stringify(whole.value))).ok).toBe(true);
    expect(blindCheck(second).entries["left.gap"]?.texts).toEqual(["24"]);
    const [difference] = personDifferences((id) => readingAt(second, id), second.record.second);
    const first = stored.record.corners[0]?.gap?.values ?? [];
    expect(difference?.difference).toBeCloseTo(
      24 - first.reduce((sum, each) => sum + each, 0) / first.length,
      12,
    );
  });
});

describe("what two people differ by", () => {
  const pair = (difference: number, id = "left.gap", tool: string | null = "tape") => ({
    id,
    tool,
    first: 20,
    second: 20 + difference,
    difference,
  });

  it("is told by reading and tool, both sides together", () => {
    const [row] = differenceStatistics([pair(1), pair(-2, "right.gap"), pair(3)]);
    // s = √((1 + 4 + 9)/6) = 1.5275; duplicates, from memory.
    expect(row).toMatchObject({ reading: "gap", tool: "tape", pairs: 3, median: 1, largest: 3 });
    expect(row?.spread).toBeCloseTo(1.527525, 6);
    expect(row?.tol).toBeNull();
  });

  it("is offered as a ± from ten pairs on, and only where both used one tool", () => {
    const ten = Array.from({ length: leastPairs }, (_, place) => pair(place % 2 === 0 ? 2 : -2));
    const [row] = differenceStatistics(ten);
    // s = √(10·4/20) = √2; √3·√2 = 2.4495, rounded up to a hundredth.
    expect(row?.tol).toBe(2.45);
    expect(measuredTolerances(differenceStatistics(ten))).toEqual([
      { reading: "gap", tool: "tape", tol: 2.45, pairs: 10 },
    ]);
    const mixed = ten.map((each) => ({ ...each, tool: null }));
    expect(measuredTolerances(differenceStatistics(mixed))).toEqual([]);
  });
});

describe("who took a reading", () => {
  const after = setEntry(stored, "left.gap", { texts: ["19"], unit: "mm", tol: "1" });

  it("stands at what was typed since, in entry and record, and nowhere else", () => {
    const stamped = stampedBy(stored, after, "Ada");
    expect(stamped.entries["left.gap"]?.by).toBe("Ada");
    expect(stamped.record.corners[0]?.gap).toMatchObject({ values: [19], by: "Ada" });
    expect(stamped.record.corners[1]?.gap?.by).toBeUndefined();
    expect(stampedBy(stamped, stamped, "Bo")).toBe(stamped);
    const again = stampedBy(
      stamped,
      setEntry(stamped, "left.gap", { texts: ["18"], unit: "mm", tol: "1" }),
      "Bo",
    );
    expect(again.record.corners[0]?.gap).toMatchObject({ values: [18], by: "Bo" });
    expect(openStored(JSON.parse(JSON.stringify(again)))?.entries["left.gap"]?.by).toBe("Bo");
  });

  it("stands at what was found by hand, as it is typed; what a file brought was typed by nobody", () => {
    const id = contactEntryId("left", "stop", "wheelTravel");
    const typedHere = setEntry(stored, id, { texts: ["58"], unit: "mm", tol: "2" });
    const signed = changeFullTravel(
      withFullTravelSigned(stored, typedHere, "Ada"),
      (found) => found,
    );
    expect(signed.record.fullTravel?.corners[0]?.contacts.stop?.reading).toMatchObject({
      values: [58],
      by: "Ada",
    });
    // Entries made of a record's readings, as its screen opens.
    const { [id]: _, ...others } = signed.entries;
    const opened = withFullTravelEntries({ ...signed, entries: others }, "mm");
    const kept = stampedBy({ ...signed, entries: others }, opened, "Bo");
    expect(kept.entries[id]?.by).toBe("Ada");
  });
});
