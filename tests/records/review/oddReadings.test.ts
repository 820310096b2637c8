import { describe, expect, it } from "vitest";
import type { CheckRecord, TypedReading } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { oddReadings, readingsOf } from "../../../src/records/review/oddReadings.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const record = demoRecord("arm-fits");

function withGaps(left: TypedReading, right: TypedReading): CheckRecord {
  return {
    ...record,
    corners: record.corners.map((corner) => ({
      ...corner,
      gap: corner.side === "left" ? left : right,
    })),
  };
}

const kindsOf = (checked: CheckRecord) =>
  oddReadings(checked, demoPack).map(({ reading, kind }) => `${reading}: ${kind}`);

describe("odd readings", () => {
  it("the demo check that fits has none", () => {
    expect(kindsOf(record)).toEqual([]);
  });

  it("a gap of 22 mm written as inches is a slip of the unit", () => {
    const slip = { values: [22 / 25.4], tol: 1 };
    const odd = oddReadings(withGaps(slip, { values: [22], tol: 1 }), demoPack);
    const [first] = odd.filter(({ kind }) => kind === "unitSlip");
    expect(first?.reading).toBe("left.gap");
    expect(withPlainSpaces(sentenceText(first?.sentence ?? [], "mm"))).toContain("22.0 mm");
  });

  it("repeats that differ by more than 3 tolerances scatter; by just 3 they do not", () => {
    const right = { values: [24], tol: 1 };
    expect(kindsOf(withGaps({ values: [22, 25.1], tol: 1 }, right))).toContain("left.gap: scatter");
    expect(kindsOf(withGaps({ values: [22, 25], tol: 1 }, right))).toEqual([]);
  });

  it("left and right 12 mm apart are pointed out at the larger", () => {
    const gaps = withGaps({ values: [20], tol: 1 }, { values: [32], tol: 1 });
    expect(kindsOf(gaps)).toContain("right.gap: leftRight");
  });

  it("a lever ratio outside 0.8 to 6 is pointed out (common practice)", () => {
    if (record.layout.kind !== "arm") throw new Error("the demo check is on an arm");
    const readings = { ...record.layout.readings, pivotToStop: { values: [40], tol: 1 } };
    const odd = oddReadings({ ...record, layout: { ...record.layout, readings } }, null);
    expect(odd.map(({ kind }) => kind)).toContain("ratio");
  });

  it("geometry that the platform of the pack contradicts is pointed out", () => {
    const platform = demoPack.platforms.find(({ layout }) => layout.kind === "arm");
    if (platform?.layout.kind !== "arm" || record.layout.kind !== "arm") throw new Error("no arm");
    const [usual = 0] = platform.layout.readings.pivotToOuter?.values ?? [];
    const contradicted: CheckRecord = {
      ...record,
      vehicle: { ...record.vehicle, platformId: platform.id },
      layout: {
        ...record.layout,
        readings: { ...platform.layout.readings, pivotToOuter: { values: [usual * 1.3], tol: 2 } },
      },
    };
    expect(kindsOf(contradicted)).toContain("pivotToOuter: reference");
    const readings = platform.layout.readings;
    const agreeing = { ...contradicted, layout: { ...record.layout, readings } };
    expect(kindsOf(agreeing).filter((kind) => kind.endsWith("reference"))).toEqual([]);
  });

  it("every reading of a record has its own id", () => {
    const ids = readingsOf(record).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain("left.gap");
    expect(ids).toContain("stop.freeHeight");
  });
});
