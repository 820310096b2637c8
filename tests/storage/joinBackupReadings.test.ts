import { describe, expect, it } from "vitest";
import type { StoredCheck } from "../../src/records/check/storedCheck.ts";
import { addLimit, setEntry, setEstimate } from "../../src/records/filling/changes.ts";
import { withMissing } from "../../src/storage/joinBackup.ts";
import { corner, fresh, holding, textsOf, typed } from "./support/holding.ts";

describe("a reading that both versions have", () => {
  it("is the newer's alone: who took it, with what, and that it was measured", () => {
    const newer = typed(fresh, "left.gap", "25");
    const given = typed(fresh, "left.gap", "21", { tool: "rule", by: "I. Farrow" });
    const older: StoredCheck = {
      ...given,
      record: {
        ...given.record,
        corners: [
          { side: "left", limits: [], gap: { values: [21], tol: 1, source: "pack", by: "I. F." } },
        ],
      },
    };
    const joined = withMissing(newer, older);
    expect(corner(joined)?.gap).toEqual(corner(newer)?.gap);
    expect(joined.entries["left.gap"]).toEqual(newer.entries["left.gap"]);
  });

  it("keeps its source and who took it where only the older has it", () => {
    const gap = { values: [21], tol: 1, source: "pack", by: "I. Farrow" };
    const older = {
      ...typed(fresh, "left.gap", "21"),
      record: { ...fresh.record, corners: [{ side: "left", limits: [], gap }] },
    } as StoredCheck;
    expect(corner(withMissing(fresh, older))?.gap).toMatchObject(gap);
  });
});

describe("ride data", () => {
  const estimated = (stored: StoredCheck, name: "wheelRateNPerMm" | "unsprungMassKg") =>
    setEstimate(stored, name, { value: 30, tolerance: 3, how: "by the spring" }, "mm");

  it("that was typed is not marked as the older's estimate, nor given its ±", () => {
    const newer = setEntry(fresh, "ride.wheelRateNPerMm", { texts: ["28"], unit: "N/mm", tol: "" });
    expect(withMissing(newer, estimated(fresh, "wheelRateNPerMm")).record.ride).toEqual({
      wheelRateNPerMm: 28,
    });
    // Of a file's record nothing may ever have been typed.
    const untyped = holding({ ride: { wheelRateNPerMm: 28 } });
    const older = holding({ ride: estimated(fresh, "wheelRateNPerMm").record.ride });
    expect(withMissing(untyped, older)).toEqual(untyped);
  });

  it("that only the older has comes with its ± and how it was estimated", () => {
    const newer = setEntry(fresh, "ride.wheelRateNPerMm", {
      texts: ["28"],
      unit: "N/mm",
      tol: "2",
    });
    const older = estimated(estimated(fresh, "wheelRateNPerMm"), "unsprungMassKg");
    expect(withMissing(newer, older).record.ride).toEqual({
      wheelRateNPerMm: 28,
      unsprungMassKg: 30,
      tolerances: { wheelRateNPerMm: 2, unsprungMassKg: 3 },
      estimated: { unsprungMassKg: "by the spring" },
    });
    expect(withMissing(fresh, older).record.ride).toEqual(older.record.ride);
    expect(withMissing(holding({ ride: { payloadPerCornerKg: 80 } }), fresh).record.ride).toEqual({
      payloadPerCornerKg: 80,
    });
  });
});

describe("limits", () => {
  const limited = (stored: StoredCheck, kind: "tyre" | "damper", text: string) =>
    typed(addLimit(stored, "left", { kind, at: "wheel" }), "left.limits.0", text);
  const limits = (stored: StoredCheck) =>
    corner(stored)?.limits.map(({ kind, reading }) => [kind, reading?.values]);

  it("of the older come to a side of the newer that has none, with what was typed", () => {
    const newer = typed(fresh, "left.gap", "25");
    const joined = withMissing(newer, limited(typed(fresh, "left.gap", "21"), "damper", "104"));
    expect(limits(joined)).toEqual([["damper", [104]]]);
    expect(corner(joined)?.gap?.values).toEqual([25]);
    expect(textsOf(joined)).toEqual({ "left.gap": "25", "left.limits.0": "104" });
  });

  it("of the newer stand as they are, one without a reading too", () => {
    const newer = addLimit(fresh, "left", { kind: "tyre", at: "wheel" });
    const joined = withMissing(newer, limited(fresh, "damper", "104"));
    expect(limits(joined)).toEqual([["tyre", undefined]]);
    expect(textsOf(joined)).toEqual({});
  });
});

describe("the layout", () => {
  const arm = (kind: string, readings: object, texts: { readonly [id: string]: string }) =>
    holding({ layout: { kind, readings } }, texts);
  const length = (text: string) => ({ values: [Number(text)], tol: 1 });

  it("that only the older chose is taken with its readings, beside what the newer typed", () => {
    const newer = typed(fresh, "pivotToOuter", "400");
    const older = typed(arm("arm", {}, {}), "pivotToStop", "152");
    const { layout } = withMissing(newer, older).record;
    expect(layout?.kind).toBe("arm");
    expect(layout?.readings?.pivotToOuter?.values).toEqual([400]);
    expect(layout?.readings?.pivotToStop?.values).toEqual([152]);
  });

  it("of another kind in the older is not in the record, but what was typed for it waits", () => {
    const newer = arm("axle", { track: length("1500") }, {});
    const older = typed(arm("arm", {}, {}), "pivotToStop", "152");
    const joined = withMissing(newer, typed(older, "left.gap", "21"));
    expect(joined.record.layout).toEqual(newer.record.layout);
    expect(textsOf(joined)).toEqual({ pivotToStop: "152", "left.gap": "21" });
    expect(corner(joined)?.gap?.values).toEqual([21]);
  });
});

describe("the layout of the same kind", () => {
  const reading = (values: number[], more: object = {}) => ({ values, tol: 1, ...more });
  const arm = (readings: object) => holding({ layout: { kind: "arm", readings } });

  it("has what only the older has of it, with who said so", () => {
    const fromPack = reading([152], { source: "pack" });
    const older = typed(arm({ pivotToStop: fromPack }), "pivotToStop", "152");
    const joined = withMissing(arm({ pivotToOuter: reading([400]) }), older);
    expect(joined.record.layout).toMatchObject({
      kind: "arm",
      readings: { pivotToOuter: reading([400]), pivotToStop: fromPack },
    });
  });

  it("is the newer's where the older had none, and has what was typed before one was chosen", () => {
    const newer = arm({ pivotToOuter: reading([400]) });
    const plain = withMissing(newer, typed(fresh, "left.gap", "21"));
    expect(plain.record.layout).toEqual(newer.record.layout);
    const before = withMissing(newer, typed(fresh, "pivotToStop", "152"));
    expect(before.record.layout?.readings?.pivotToStop?.values).toEqual([152]);
    expect(before.record.layout?.readings?.pivotToOuter?.values).toEqual([400]);
  });

  it("has the newer's number to the last digit, however short its text is", () => {
    const newer: StoredCheck = {
      ...arm({ pivotToStop: reading([152.43]) }),
      entries: { pivotToStop: { texts: ["6"], unit: "in", tol: "" } },
    };
    const joined = withMissing(newer, typed(fresh, "left.gap", "21"));
    expect(joined.record.layout?.readings?.pivotToStop?.values).toEqual([152.43]);
  });
});

describe("a reading of the newer that can't be read", () => {
  it("is none: the record does not have the older's in its place", () => {
    const newer = typed(fresh, "left.gap", "2 5/");
    const gap = { values: [21], tol: 1 };
    const untyped = holding({ corners: [{ side: "left", limits: [], gap }] });
    for (const older of [untyped, typed(fresh, "left.gap", "21")]) {
      const joined = withMissing(newer, older);
      expect(corner(joined)).toEqual({ side: "left", limits: [] });
      expect(textsOf(joined)).toEqual({ "left.gap": "2 5/" });
    }
  });
});

describe("what is made of two readings", () => {
  it("is made of the newer's and the older's where each has one", () => {
    const newer = typed(fresh, "left.liftedHeight", "520");
    const joined = withMissing(newer, typed(fresh, "left.pushedHeight", "510"));
    expect(corner(joined)?.settleMm).toBe(5);
  });
});
