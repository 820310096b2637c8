import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { readCheckText, readCheckValue } from "../../../src/records/check/readCheck.ts";

const folder = new URL("../../../demo-data/checks/", import.meta.url);
const demo = (): { [field: string]: unknown } =>
  JSON.parse(readFileSync(new URL("arm-fits.json", folder), "utf8"));

describe("a record of version 1", () => {
  it("is read as one of version 2, and nothing in it changes but the version", () => {
    for (const file of readdirSync(folder)) {
      const text = readFileSync(new URL(file, folder), "utf8");
      const outcome = readCheckText(text);
      if (!outcome.ok) throw new Error(`${file}: ${inModelUnits(outcome.fault.sentence)}`);
      expect(outcome.value).toEqual({ ...JSON.parse(text), version: 2 });
    }
  });

  it("has nothing that version 1 had no meaning for, even where a field has that name", () => {
    const record = demo();
    const [left, right] = record.corners as object[];
    const outcome = readCheckValue({
      ...record,
      version: 1,
      layout: {
        ...(record.layout as object),
        armRole: "none",
        stopOn: 3,
        wheelPerOuter: 1.04,
        wheelPerOuterTol: "?",
        readings: { ...(record.layout as { readings: object }).readings, boltSpacing: "wide" },
      },
      corners: [{ ...left, settleMm: "much", seatToPad: 5 }, right],
      stop: { ...(record.stop as object), branches: "two", testDoubt: 1, partNumber: 7 },
      rules: { roadKurtosis: 9 },
      job: 4,
      fitted: "yes",
    });
    expect(outcome).toEqual({
      ok: true,
      value: {
        ...record,
        version: 2,
        rules: {},
        layout: { ...(record.layout as object), wheelPerOuter: 1.04 },
      },
    });
  });

  it("keeps of its check of the whole travel what can be read, and no block", () => {
    const reading = { values: [58], tol: 2 };
    const outcome = readCheckValue({
      ...demo(),
      version: 1,
      fullTravel: {
        acknowledged: "2026-05-02T10:00:00Z",
        measure: "wheelTravel",
        movement: "both",
        corners: [
          {
            side: "left",
            contacts: { stop: { reading }, tyre: { reading: "far" }, block: { reading } },
          },
          { side: "top" },
        ],
      },
    });
    expect(outcome.ok && outcome.value.fullTravel).toEqual({
      acknowledged: "2026-05-02T10:00:00Z",
      measure: "wheelTravel",
      movement: "both",
      corners: [{ side: "left", contacts: { stop: { reading } } }],
    });
    const unreadable = readCheckValue({
      ...demo(),
      version: 1,
      fullTravel: { acknowledged: "soon" },
    });
    expect(unreadable.ok && "fullTravel" in unreadable.value).toBe(false);
  });

  it("with a limit on the arm is refused: version 1 has none", () => {
    const record = demo();
    const [left] = record.corners as { limits: object[] }[];
    const limits = [{ ...left?.limits[0], at: "arm", distance: { values: [200], tol: 2 } }];
    const outcome = readCheckValue({ ...record, version: 1, corners: [{ ...left, limits }] });
    expect(outcome.ok).toBe(false);
  });
});
