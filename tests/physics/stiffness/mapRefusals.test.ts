import { describe, expect, it } from "vitest";
import type { Corner, Fitment, Layout } from "../../../src/physics/fitment.ts";
import { impactSetupOf } from "../../../src/physics/impact/impactSetup.ts";
import { fail } from "../../../src/physics/outcome.ts";
import { defaultRules } from "../../../src/physics/road/useRules.ts";
import { tryEvents } from "../../../src/physics/stiffness/eventFailures.ts";
import { heightClassMap, type MapCell } from "../../../src/physics/stiffness/heightClassMap.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, ride, tyreLimit, uprightStrut } from "../staticFitments.ts";

const arm: Layout = {
  kind: "arm",
  readings: { pivotToStop: exact(100), pivotToOuter: exact(250) },
};
const fitment = uprightStrut({
  gap: exact(20),
  limits: [tyreLimit(exact(140))],
  fitment: { layout: arm },
});

function mapOf(one: Fitment, heights: readonly number[] | null = null) {
  return heightClassMap(one, one.corners[0] as Corner, heights);
}

function firstCell(one: Fitment, height: number): MapCell {
  for (const cell of unwrapped(mapOf(one, [height])).cells()) {
    if (cell !== null && cell.extraHeightMm === height) return cell;
  }
  throw new Error("no cell");
}

describe("a map that cannot be made", () => {
  it("names a suspension without damping, whose road travel has no bound", () => {
    const undamped = { ...ride, damperBumpNsPerMm: 0, damperReboundNsPerMm: 0 };
    expect(refusal(mapOf({ ...fitment, ride: undamped }))).toBe(
      "dampingNotPositive (ride.damperBumpNsPerMm): The damping at the wheel must be above 0. Check that value.",
    );
  });
});

describe("heights at the ends of an arm's reach", () => {
  it("a stop too short to be met within it is judged not clear, and has no place of contact", () => {
    const cell = firstCell(fitment, -90);
    expect(cell).toMatchObject({ contactMm: null, fullStopMm: null, reserveMm: null });
    expect(cell.failures).toContain("clearance");
    expect(cell.failures).not.toContain("earlyContact");
  });

  it("a stop that would hold the wheel lower than it can hang is neither clear nor computed", () => {
    const cell = firstCell(fitment, 500);
    expect(cell).toMatchObject({ restTravelMm: null, events: [] });
    expect(cell.failures).toEqual(["clearance", "notComputed"]);
  });
});

describe("heights that the map chooses itself", () => {
  const heightsOf = (one: Fitment) => unwrapped(mapOf(one)).heights;

  it("ask nothing of a limit that was not measured", () => {
    const [corner] = fitment.corners;
    const open = { ...fitment, corners: [{ ...(corner as Corner), limits: [] }] };
    expect(heightsOf(open)).toContain(0);
    expect(heightsOf(open)).toHaveLength(13);
  });

  it("are the narrowest, 5 mm apart, where neither reserve nor road lies within reach", () => {
    const rules = { reserveMm: 1e5, roadClass: "E" as const };
    const soft = { ...ride, damperBumpNsPerMm: 0.02, damperReboundNsPerMm: 0.02 };
    expect(heightsOf({ ...fitment, rules, ride: soft })).toEqual([
      -30, -25, -20, -15, -10, -5, 0, 5, 10, 15, 20, 25, 30,
    ]);
  });
});

describe("an event that cannot be computed", () => {
  it("fails as such, with its fault", () => {
    const setup = unwrapped(impactSetupOf(fitment, fitment.corners[0] as Corner, { loaded: true }));
    const steps = tryEvents(setup, defaultRules.daily, { mostSteps: 1 });
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value.results).toEqual([null, null]);
    expect(step.value.failures).toEqual([
      { eventIndex: 0, kind: "notComputed" },
      { eventIndex: 1, kind: "notComputed" },
    ]);
    expect(step.value.faults.map((fault) => refusal(fail(fault.code, fault.sentence)))).toEqual([
      expect.stringMatching(/^impactTooStiff: /),
      expect.stringMatching(/^impactTooStiff: /),
    ]);
  });
});
