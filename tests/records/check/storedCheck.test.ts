import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import {
  changeRecord,
  copyStored,
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import {
  addLimit,
  chooseLayout,
  chooseRightGeometry,
  chooseStop,
  removeCorner,
  removeLimit,
  setEntry,
  setEstimate,
} from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { anyRecord } from "../arbitraries.ts";

// Generated cases by the hundred take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const folder = new URL("../../../demo-data/checks/", import.meta.url);
const examples: CheckRecord[] = readdirSync(folder).map((file) =>
  JSON.parse(readFileSync(new URL(file, folder), "utf8")),
);

function mm(...texts: string[]) {
  return { texts, unit: "mm" as const, tol: "" };
}

function missingFields(stored: StoredCheck): string[] {
  const completion = completeRecord(stored);
  return completion.ok ? [] : completion.missing.map(({ field }) => field);
}

describe("a record as a stored check and back", () => {
  it("is the very same record, for the demo checks", () => {
    expect(examples).toHaveLength(17);
    for (const record of examples) {
      const completion = completeRecord(storedFromRecord(record));
      expect(completion).toEqual({ ok: true, value: record });
    }
  });

  it("is the very same record, for generated ones", () => {
    fc.assert(
      fc.property(anyRecord, fc.constantFrom("mm" as const, "in" as const), (record, unit) => {
        const stored = structuredClone(storedFromRecord(record, { unit }));
        expect(completeRecord(stored)).toEqual({ ok: true, value: record });
      }),
      { numRuns: 300 },
    );
  });

  it("keeps its values when every entry is entered again as it stands, in either unit", () => {
    fc.assert(
      fc.property(anyRecord, fc.constantFrom("mm" as const, "in" as const), (record, unit) => {
        let stored = storedFromRecord(record, { unit });
        for (const [id, entry] of Object.entries(stored.entries))
          stored = setEntry(stored, id, entry);
        const completion = completeRecord(stored);
        expect(completion.ok && withoutTyped(completion.value)).toEqual(withoutTyped(record));
      }),
      { numRuns: 200 },
    );
  });
});

function withoutTyped(record: CheckRecord): unknown {
  return JSON.parse(JSON.stringify(record, (key, value) => (key === "typed" ? undefined : value)));
}

describe("typing an entry", () => {
  it("sets the value in mm and keeps what was typed", () => {
    const stored = setEntry(newStoredCheck(), "left.gap", {
      texts: ["2 5/16", "58,7 mm"],
      unit: "in",
      tol: "1/16",
    });
    expect(stored.record.corners).toEqual([
      {
        side: "left",
        limits: [],
        gap: { values: [58.7375, 58.7], tol: 1.5875, typed: ["2 5/16 in", "58,7 mm"] },
      },
    ]);
  });

  it("takes the field out of the record while it can't be read, and never the text", () => {
    let stored = setEntry(newStoredCheck(), "left.gap", mm("58"));
    stored = setEntry(stored, "left.gap", mm("58", "5 8/0"));
    expect(stored.record.corners[0]?.gap).toBeUndefined();
    expect(stored.entries["left.gap"]?.texts).toEqual(["58", "5 8/0"]);
    expect(setEntry(stored, "left.gap", mm("58", "")).record.corners[0]?.gap?.values).toEqual([58]);
  });

  it("offers a reading for change in the unit it was typed in, after a trip through a file", () => {
    const example = examples[0];
    if (example === undefined) throw new Error("no example");
    const typed = setEntry(storedFromRecord(example), "left.gap", {
      texts: ["2 5/16", "2.31"],
      unit: "in",
      tol: "1/16",
    });
    const completion = completeRecord(typed);
    if (!completion.ok) throw new Error("incomplete");
    const again = storedFromRecord(JSON.parse(JSON.stringify(completion.value)), { unit: "mm" });
    expect(again.entries["left.gap"]).toEqual({
      texts: ["2 5/16", "2.31"],
      unit: "in",
      tol: "0.0625",
    });
  });

  it("believes the numbers, not the text, where a record's two disagree", () => {
    const example = structuredClone(examples[0]) as CheckRecord;
    const record = {
      ...example,
      corners: example.corners.map((corner) => ({
        ...corner,
        gap: { values: [40], tol: 1, typed: ["2 5/16 in"] },
      })),
    };
    expect(storedFromRecord(record).entries["left.gap"]).toEqual({
      texts: ["40"],
      unit: "mm",
      tol: "1",
    });
  });

  it("reads ride data, ratios and tables too, and drops what is blank", () => {
    let stored = newStoredCheck();
    stored = setEntry(stored, "ride.wheelRateNPerMm", { texts: ["160"], unit: "lbf/in", tol: "" });
    expect(stored.record.ride?.wheelRateNPerMm).toBeCloseTo(28.02029363943616, 12);
    stored = setEntry(stored, "ride.wheelRateNPerMm", { texts: [""], unit: "lbf/in", tol: "" });
    expect(stored.record.ride).toBeUndefined();
    stored = setEntry(stored, "vehicle.liftMm", { texts: ["-1 1/2"], unit: "in", tol: "" });
    expect(stored.record.vehicle?.liftMm).toBeCloseTo(-38.1, 12);
    stored = setEntry(stored, "stop.curve", mm("10", "100", "20", "400 ", "", ""));
    expect(stored.record.stop?.curve).toEqual([
      [10, 100],
      [20, 400],
    ]);
    stored = setEntry(stored, "stop.curve", mm("10", "100", "20", "", "", ""));
    expect(stored.record.stop?.curve).toBeUndefined();
    stored = setEntry(stored, "stop.damping", mm("", "", ""));
    expect(stored.record.stop?.damping).toBeNull();
  });

  it("keeps what else a record says of a reading", () => {
    const stored = newStoredCheck();
    const tagged = changeRecord(stored, (record) => ({
      ...record,
      corners: [{ side: "left", limits: [], gap: { values: [9], tol: 1, ...{ tool: "feeler" } } }],
    }));
    expect(setEntry(tagged, "left.gap", mm("12")).record.corners[0]?.gap).toEqual({
      values: [12],
      tol: 1,
      typed: ["12 mm"],
      tool: "feeler",
    });
  });

  it("forgets that a value was estimated once another is typed over it", () => {
    let stored = setEstimate(
      newStoredCheck(),
      "wheelRateNPerMm",
      { value: 31, tolerance: 4, how: "from the sag of the spring" },
      "mm",
    );
    expect(stored.record.ride).toEqual({
      wheelRateNPerMm: 31,
      tolerances: { wheelRateNPerMm: 4 },
      estimated: { wheelRateNPerMm: "from the sag of the spring" },
    });
    stored = setEntry(stored, "ride.wheelRateNPerMm", { texts: ["28"], unit: "N/mm", tol: "" });
    expect(stored.record.ride).toEqual({ wheelRateNPerMm: 28 });
  });
});

describe("a ride value of a record, opened by a person in inches", () => {
  it("stands in the unit in which it is a short number, its ± with it", () => {
    const example = examples[0];
    if (example === undefined) throw new Error("no example");
    const opened = (value: number, tolerance: number) =>
      storedFromRecord(
        {
          ...example,
          ride: { wheelRateNPerMm: value, tolerances: { wheelRateNPerMm: tolerance } },
        },
        { unit: "in" },
      ).entries["ride.wheelRateNPerMm"];
    expect(opened(28, 1.5)).toEqual({ texts: ["28"], unit: "N/mm", tol: "1.5" });
    const poundPerInch = 4.4482216152605 / 25.4;
    expect(opened(160 * poundPerInch, 8 * poundPerInch)).toEqual({
      texts: ["160"],
      unit: "lbf/in",
      tol: "8",
    });
  });
});

describe("what is missing", () => {
  it("is everything in a new check, each in a sentence", () => {
    const completion = completeRecord(newStoredCheck());
    if (completion.ok) throw new Error("a new check cannot be complete");
    expect(completion.missing.map(({ field }) => field)).toEqual([
      "vehicle.label",
      "vehicle.use",
      "axle",
      "layout.kind",
      "corners",
      "stop.name",
      "stop.duty",
      "stop.freeHeight",
      "stop.usableCompressionMm",
      "stop.curve",
    ]);
    for (const { sentence } of completion.missing) expect(inModelUnits(sentence)).toMatch(/\.$/);
  });

  it("names a reading that can't be read, with what is wrong with it", () => {
    const example = examples[0] as CheckRecord;
    const stored = setEntry(storedFromRecord(example), "right.limits.0", mm("1,234.5"));
    const completion = completeRecord(stored);
    if (completion.ok) throw new Error("unreadable");
    expect(completion.fault.reading).toBe("right.limits.0");
    expect(inModelUnits(completion.fault.sentence)).toBe(
      "The right clearance over the tire: “1,234.5” has more than one point or comma. Type it without any mark for thousands.",
    );
  });

  it("includes an optional reading with something unreadable in it, not a blank one", () => {
    const example = examples[0] as CheckRecord;
    const stored = storedFromRecord(example);
    expect(missingFields(setEntry(stored, "left.rideHeight", mm("52o")))).toEqual([
      "left.rideHeight",
    ]);
    expect(missingFields(setEntry(stored, "left.rideHeight", mm("")))).toEqual([]);
  });

  it("finds what does not hold together by the same rules as a file", () => {
    const example = examples[0] as CheckRecord;
    const stored = setEntry(storedFromRecord(example), "stop.usableCompressionMm", mm("60"));
    expect(missingFields(stored)).toEqual(["stop.usableCompressionMm"]);
  });

  it("is nothing exactly where the record is valid, whatever is entered", () => {
    const text = fc.constantFrom("", "0", "12", "-3", "1 3/8", "5/0", "1e999", "9,5", "abc", "70");
    const ids = fc.constantFrom(
      "left.gap",
      "left.rideHeight",
      "pivotToStop",
      "armAngle",
      "stop.freeHeight",
      "stop.usableCompressionMm",
      "left.limits.0",
      "left.limits.0.perWheel",
      "ride.payloadPerCornerKg",
      "vehicle.liftMm",
    );
    fc.assert(
      fc.property(anyRecord, fc.array(fc.tuple(ids, text), { maxLength: 4 }), (record, edits) => {
        let stored = storedFromRecord(record);
        for (const [id, edit] of edits) {
          const unit = stored.entries[id]?.unit ?? "mm";
          stored = setEntry(stored, id, { texts: [edit], unit, tol: "" });
        }
        const completion = completeRecord(stored);
        if (completion.ok) expect(readCheckValue(completion.value).ok).toBe(true);
        else expect(completion.missing.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe("choosing", () => {
  it("brings back what was typed for a layout when it is chosen again", () => {
    let stored = chooseLayout(newStoredCheck(), "arm");
    stored = setEntry(stored, "pivotToStop", mm("152"));
    stored = setEntry(stored, "stopLean", { texts: ["5"], unit: "deg", tol: "" });
    stored = chooseLayout(stored, "strut");
    expect(Object.keys(stored.record.layout?.readings ?? {})).toEqual(["stopLean"]);
    stored = chooseLayout(stored, "arm");
    expect(stored.record.layout?.readings?.pivotToStop?.values).toEqual([152]);
  });

  it("takes the right side's own geometry away and brings it back", () => {
    let stored = chooseLayout(newStoredCheck(), "arm");
    stored = setEntry(stored, "right.gap", mm("22"));
    stored = chooseRightGeometry(stored, "own");
    stored = setEntry(stored, "right.pivotToStop", mm("150"));
    stored = chooseRightGeometry(stored, "same");
    expect(stored.record.corners[0]?.geometry).toBeUndefined();
    expect(stored.entries["right.pivotToStop"]?.texts).toEqual(["150"]);
    stored = chooseRightGeometry(stored, "own");
    expect(stored.record.corners[0]?.geometry?.pivotToStop?.values).toEqual([150]);
    expect(stored.record.corners[0]?.gap?.values).toEqual([22]);
  });

  it("moves the entries of later limits down when one is taken out", () => {
    let stored = newStoredCheck();
    for (const kind of ["tyre", "damper", "metal"] as const) {
      stored = addLimit(stored, "left", { kind, at: "wheel" });
    }
    stored = setEntry(stored, "left.limits.0", mm("160"));
    stored = setEntry(stored, "left.limits.1", mm("104"));
    stored = setEntry(stored, "left.limits.1.perWheel", { texts: ["0.62"], unit: "", tol: "" });
    stored = setEntry(stored, "left.limits.2", mm("x"));
    stored = removeLimit(stored, "left", 0);
    expect(stored.record.corners[0]?.limits).toEqual([
      {
        kind: "damper",
        at: "wheel",
        perWheel: 0.62,
        reading: { values: [104], tol: 2, typed: ["104 mm"] },
      },
      { kind: "metal", at: "wheel" },
    ]);
    expect(stored.entries["left.limits.0"]?.texts).toEqual(["104"]);
    expect(stored.entries["left.limits.0.perWheel"]?.texts).toEqual(["0.62"]);
    expect(stored.entries["left.limits.1"]?.texts).toEqual(["x"]);
    expect(stored.entries["left.limits.2"]).toBeUndefined();
  });

  it("puts a stop and its entries in the place of another's", () => {
    const [first, second] = examples as [CheckRecord, CheckRecord];
    const stored = chooseStop(storedFromRecord(first), second.stop, "in");
    expect(stored.record.stop).toEqual(second.stop);
    const height = stored.entries["stop.freeHeight"];
    expect(height).toMatchObject({ texts: ["42"], unit: "mm" });
    expect(completeRecord(stored)).toEqual({ ok: true, value: { ...first, stop: second.stop } });
  });

  it("takes a side out with what was typed for it", () => {
    const stored = removeCorner(storedFromRecord(examples[0] as CheckRecord), "right");
    expect(stored.record.corners.map(({ side }) => side)).toEqual(["left"]);
    expect(Object.keys(stored.entries).filter((id) => id.startsWith("right."))).toEqual([]);
  });
});

describe("copying and renaming", () => {
  it("gives a copy an id of its own, in the record too, and leaves the first as it was", () => {
    const stored = storedFromRecord(examples[0] as CheckRecord);
    const before = structuredClone(stored);
    const copy = copyStored({ ...stored, revision: 4, deletedAt: "2026-01-01T00:00:00Z" }, "Again");
    expect(copy.id).not.toBe(stored.id);
    expect(copy.record.id).toBe(copy.id);
    expect(copy.name).toBe("Again");
    expect(copy.revision).toBeUndefined();
    expect(copy.deletedAt).toBeUndefined();
    expect(copy.entries).toEqual(stored.entries);
    expect(stored).toEqual(before);
    expect(readCheckValue(completed(copy)).ok).toBe(true);
  });

  it("renames the check, not the vehicle", () => {
    const stored = renameStored(storedFromRecord(examples[0] as CheckRecord), "Bay 2");
    expect(stored.name).toBe("Bay 2");
    expect(stored.record.vehicle?.label).toBe("Marlow 4-door utility");
  });
});

function completed(stored: StoredCheck): CheckRecord {
  const completion = completeRecord(stored);
  if (!completion.ok) throw new Error(inModelUnits(completion.fault.sentence));
  return completion.value;
}
