import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fromVersion1 } from "../../../src/records/check/earlierVersion.ts";
import { readCheckText, readCheckValue } from "../../../src/records/check/readCheck.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

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

describe("what version 1 did not have", () => {
  const later = Object.fromEntries(
    ["usableTolMm", "restLoss", "staticShare", "branches", "testDoubt"].map((name) => [name, 1]),
  );

  it("is left out wherever it stands, and all else stays as it is", () => {
    const geometry = Object.fromEntries(
      [
        "pivotToStop",
        "pivotToOuter",
        "pivotToMount",
        "damperLength",
        "track",
        "stopSpacing",
        "armAngle",
        "stopLineAngle",
        "mountLineAngle",
        "stopLean",
      ].map((name) => [name, name]),
    );
    const layout = { kind: "arm", readings: geometry };
    const laterLayout = { armRole: 1, stopOn: 1, wheelPerOuterTol: 1 };
    const corner = { side: "left", geometry, limits: [{ kind: "tyre" }, 5] };
    const old = {
      layout,
      corners: [corner, 5],
      stop: { name: "Short" },
      reference: { pack: "p", platform: { id: "x", layout } },
    };
    const found = fromVersion1({
      layout: { ...layout, ...laterLayout, readings: { ...geometry, boltSpacing: 1 } },
      corners: [
        {
          ...corner,
          pressedHeight: 1,
          seatToPad: 1,
          settleMm: 1,
          geometry: { ...geometry, boltSpacing: 1 },
          limits: [{ kind: "tyre", distance: 1 }, 5],
        },
        5,
      ],
      stop: { name: "Short", ...later, partNumber: 1, revision: 1, batch: 1 },
      reference: {
        pack: "p",
        edition: 1,
        stop: 1,
        platform: { id: "x", layout: { ...layout, ...laterLayout } },
      },
    });
    expect(found).toEqual({ ...old, version: 2 });
  });

  it("changes nothing of what is no group where one should stand", () => {
    for (const odd of [5, null, "a", [1]]) {
      const record = { layout: odd, corners: odd, stop: odd, rules: odd, reference: odd };
      expect(fromVersion1(record)).toEqual({ ...record, version: 2 });
      const inner = {
        layout: { readings: odd },
        corners: [{ geometry: odd, limits: odd }],
        reference: { platform: odd },
      };
      expect(fromVersion1(inner)).toEqual({ ...inner, version: 2 });
    }
    expect(fromVersion1({})).toEqual({ version: 2 });
  });
});
