import { describe, expect, it } from "vitest";
import type { LayoutKind } from "../../../src/physics/fitment.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import {
  changeProgress,
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import {
  addLimit,
  chooseLayout,
  chooseRightGeometry,
  setEntry,
} from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { type Sides, withSides } from "../../../src/records/filling/sides.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { standingSteps } from "../../../src/screens/guide/standing.ts";
import { firstOpenStep, stepFor, stepsOf } from "../../../src/screens/guide/steps.ts";
import { demoNames, demoRecord } from "../answer/demoChecks.ts";

function checkOn(kind: LayoutKind, sides: Sides = "both"): StoredCheck {
  return chooseLayout(withSides(newStoredCheck(), sides), kind);
}

const idsOf = (stored: StoredCheck) => stepsOf(stored).map(({ id }) => id);
const readingsOf = (stored: StoredCheck) =>
  stepsOf(stored)
    .filter(({ section }) => section === "Left side" || section === "Right side")
    .map(({ id }) => id);
const stepOf = (stored: StoredCheck, id: string) => stepsOf(stored).find((step) => step.id === id);

describe("the steps of a check", () => {
  it("begin with the vehicle and the cautions, before anything is measured", () => {
    const ids = idsOf(newStoredCheck());
    expect(ids.slice(0, 4)).toEqual(["vehicle", "cautions", "standing", "axle"]);
    expect(ids.at(-1)).toBe("finish");
    expect(ids.some((id) => id.endsWith(".gap"))).toBe(false);
  });

  // The readings of each layout: the record format's own table.
  it.each([
    ["arm", ["pivotToStop", "pivotToOuter", "armAngle", "stopLineAngle", "stopLean"]],
    [
      "damper",
      ["pivotToMount", "pivotToOuter", "damperLength", "armAngle", "mountLineAngle", "stopLean"],
    ],
    ["strut", ["stopLean", "linkage"]],
    ["axle", ["track", "stopSpacing", "stopLean"]],
  ] as const)("ask for every reading of the layout %s, left then right", (kind, geometry) => {
    expect(readingsOf(checkOn(kind))).toEqual([
      ...geometry,
      "left.gap",
      "left.rideHeight",
      "left.limits",
      "right.geometry",
      "right.gap",
      "right.rideHeight",
      "right.limits",
    ]);
  });

  it("ask for one side only where one side is measured", () => {
    expect(readingsOf(checkOn("strut", "right"))).toEqual([
      "stopLean",
      "linkage",
      "right.gap",
      "right.rideHeight",
      "right.limits",
    ]);
  });

  it("ask for the right side's own geometry, but never twice for the track of one axle", () => {
    const own = chooseRightGeometry(checkOn("arm"), "own");
    expect(readingsOf(own)).toContain("right.pivotToStop");
    const axle = readingsOf(chooseRightGeometry(checkOn("axle"), "own"));
    expect(axle).toContain("right.stopLean");
    expect(axle).not.toContain("right.track");
  });

  it("add one reading for each hard limit", () => {
    const limited = addLimit(checkOn("strut", "left"), "left", { kind: "tyre", at: "wheel" });
    expect(readingsOf(limited)).toContain("left.limits.0");
    expect(stepOf(limited, "left.limits")?.state).toBe("done");
    expect(stepOf(limited, "left.limits.0")?.state).toBe("todo");
  });

  it("take “none can be reached” for an answer", () => {
    const stored = checkOn("strut", "left");
    expect(stepOf(stored, "left.limits")?.state).toBe("todo");
    expect(stepOf(withChoice(stored, "left.limits", "none"), "left.limits")?.state).toBe("done");
  });

  it("ask for curve and damping only of a stop that is typed by hand", () => {
    const stored = newStoredCheck();
    expect(idsOf(stored)).not.toContain("stop.curve");
    expect(idsOf(withChoice(stored, "stop.source", "hand"))).toContain("stop.curve");
    expect(idsOf(withChoice(stored, "stop.source", "pack"))).not.toContain("stop.curve");
  });

  it("tell done, skipped, to do and unreadable apart", () => {
    const stored = checkOn("arm", "left");
    const entry = (text: string) => ({ texts: [text], unit: "mm", tol: "" }) as const;
    expect(stepOf(stored, "left.gap")).toMatchObject({ state: "todo", unreadable: false });
    expect(stepOf(setEntry(stored, "left.gap", entry("21")), "left.gap")?.state).toBe("done");
    const skipped = changeProgress(stored, { skipped: ["left.gap"] });
    expect(stepOf(skipped, "left.gap")?.state).toBe("skipped");
    const unreadable = setEntry(skipped, "left.gap", entry("about 2o"));
    expect(stepOf(unreadable, "left.gap")).toMatchObject({ state: "skipped", unreadable: true });
    expect(stepOf(setEntry(skipped, "left.gap", entry("21")), "left.gap")?.state).toBe("done");
  });

  it("mark a stop that can't be so, as the record's own rules have it", () => {
    const curve = { texts: ["5", "900", "10", "800"], unit: "mm", tol: "" } as const;
    const stored = setEntry(
      withChoice(newStoredCheck(), "stop.source", "hand"),
      "stop.curve",
      curve,
    );
    expect(stepOf(stored, "stop.curve")?.unreadable).toBe(true);
  });

  it("have no step that only a choice on another would lead to", () => {
    const all = stepsOf(checkOn("arm"));
    expect(["use", "vehicle.use", "standing"].map((id) => stepFor(id, all))).toEqual([
      "vehicle",
      "vehicle",
      "standing",
    ]);
  });

  it("begin again at the first that is open", () => {
    expect(firstOpenStep(stepsOf(newStoredCheck()))).toBe("vehicle");
    const stored = storedFromRecord(demoRecord("arm-fits"));
    expect(firstOpenStep(stepsOf(stored))).toBe("cautions");
    const stands = { stood: standingSteps.map(({ id }) => id) };
    const read = changeProgress(stored, { cautionsFor: "level", ...stands });
    expect(firstOpenStep(stepsOf(read))).toBe("stopLineAngle");
  });
});

describe("the way to the step of a reading", () => {
  it.each(demoNames)("finds the step of everything that is missing from an emptied %s", (name) => {
    const whole = storedFromRecord(demoRecord(name));
    const emptied: StoredCheck = {
      ...changeRecord(whole, (record) => ({
        ...record,
        vehicle: {},
        stop: {},
        layout: { kind: demoRecord(name).layout.kind, readings: {} },
        corners: record.corners.map(({ side, limits }) => ({
          side,
          limits: limits.map(({ kind, at }) => ({ kind, at })),
        })),
      })),
      entries: {},
    };
    const completion = completeRecord(emptied);
    if (completion.ok) throw new Error("an emptied check is not complete");
    const all = stepsOf(emptied);
    for (const { field } of completion.missing) {
      expect([field, stepFor(field, all)]).toEqual([field, expect.any(String)]);
    }
  });

  it("knows the steps that hold several fields, and the first side's geometry", () => {
    const all = stepsOf(checkOn("arm"));
    expect(stepFor("ride.damperReboundNsPerMm", all)).toBe("ride.damperBumpNsPerMm");
    expect(stepFor("rules.events", all)).toBe("rules");
    expect(stepFor("cornerMassKg", all)).toBe("left.cornerMassKg");
    expect(stepFor("right.armAngle", all)).toBe("armAngle");
    expect(stepFor("gap", all)).toBe("left.gap");
    expect(stepFor("nothing like it", all)).toBeNull();
  });
});
