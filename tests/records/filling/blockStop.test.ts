import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { changeRecord } from "../../../src/records/check/storedCheck.ts";
import { blockOf, withBlock } from "../../../src/records/filling/blockStop.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { helperInputs } from "../../../src/records/filling/helperInputs.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

describe("a block of solid rubber without a test sheet", () => {
  const own = { name: "Unknown", duty: "impact", freeHeight: { values: [60], tol: 1 } } as const;
  const bare = changeRecord(storedFromRecord(demoRecord("arm-fits")), (record) => ({
    ...record,
    stop: own,
  }));
  const typed = (hardness: string, diameter: string) => {
    const hard = { texts: [hardness], unit: "" as const, tol: "" };
    const wide = { texts: [diameter], unit: "mm" as const, tol: "" };
    const first = setEntry(bare, helperInputs.blockHardness.id, hard);
    return setEntry(first, helperInputs.blockDiameter.id, wide);
  };

  it("is not told before hardness and diameter are", () => {
    expect(blockOf(bare)).toBeNull();
    expect(blockOf(typed("60", ""))).toBeNull();
  });

  it("names what cannot be estimated", () => {
    expect(blockOf(typed("95", "60"))?.ok).toBe(false);
  });

  it("becomes the check's stop, marked as an estimate, what was measured kept, and is answered", () => {
    const stored = typed("60", "60");
    const block = blockOf(stored);
    if (!block?.ok) throw new Error("no estimate");
    const taken = withBlock(stored, block.value, "mm", inModelUnits);
    expect(taken.record.stop).toMatchObject({ ...own, testedAtSpeed: false, damping: null });
    expect(taken.record.stop?.estimated?.forceShare).toBeGreaterThanOrEqual(0.25);
    expect(taken.record.stop?.usableCompressionMm).toBeCloseTo(9, 1);
    // No digits that no estimate has.
    for (const row of [0, 1, 2, 3, 4]) {
      const { texts } = taken.entries["stop.curve"] ?? { texts: [] };
      expect(texts[2 * row]).toMatch(/^\d+(\.\d{1,2})?$/);
      expect(texts[2 * row + 1]).toMatch(/^\d+(\.\d)?$/);
    }
    const completion = completeRecord(taken);
    if (!completion.ok) throw new Error(JSON.stringify(completion.missing));
    expect(assessStatic(fitmentOf(completion.value), { samples: 10_000 }).ok).toBe(true);
  });
});
