import { describe, expect, it } from "vitest";
import { placeMeans } from "../../../src/physics/budget/cornerReadings.ts";
import { travelToHardLimit } from "../../../src/physics/budget/hardLimit.ts";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment, HardLimit, Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";

const strut = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] });

function budgetOf(fitment: Fitment, reserveWanted = 5) {
  return travelBudget(fitment, fitment.corners[0] as Corner, reserveWanted);
}

const leaning = (lean: number, change: Parameters<typeof uprightStrut>[0] = {}): Fitment =>
  uprightStrut({
    ...change,
    fitment: {
      layout: {
        kind: "axle",
        readings: { track: exact(1e5), stopSpacing: exact(1), stopLean: exact(lean) },
      },
      ...change.fitment,
    },
  });

describe("a budget that cannot be made", () => {
  it("names a layout without motion", () => {
    const flat: Layout = { kind: "strut", readings: { stopLean: exact(89.96) } };
    expect(refusal(budgetOf({ ...strut, layout: flat }))).toBe(
      "stopLeansFlat (stopLean): The stop lies flat, so the wheel cannot close it. Measure its lean again.",
    );
  });

  it("names a reading that only it takes: the stop's free height", () => {
    const stop = { ...strut.stop, freeHeight: exact(0) };
    expect(refusal(budgetOf({ ...strut, stop }))).toBe(
      "lengthNotPositive (stop.freeHeight): The free height of the stop must be above zero. Measure it again.",
    );
  });

  it("names a gap that the suspension cannot close, and a full stop that it cannot reach", () => {
    // A level arm of 100 mm to the stop closes it by 100 mm less what its range leaves out, never more.
    const arm: Layout = {
      kind: "arm",
      readings: { pivotToStop: exact(100), pivotToOuter: exact(300) },
    };
    const onArm = (gap: number) => uprightStrut({ gap: exact(gap), fitment: { layout: arm } });
    expect(refusal(budgetOf(onArm(101)))).toBe(
      "gapOutOfReach (left.gap): The left gap, 101.0 mm, is more than this suspension can close. Measure it and the arm's readings again.",
    );
    expect(refusal(budgetOf(onArm(85)))).toBe(
      "fullStopOutOfReach (left.gap): This suspension cannot press the stop by its usable 30.0 mm after the left gap of 85.0 mm. Measure the gap and the arm's readings again.",
    );
  });

  it("names the limit where what is wanted before it lies out of reach", () => {
    expect(refusal(budgetOf(strut, 2e6))).toBe(
      "limitOutOfReach (left.limits.0): The hard limit lies where this suspension cannot reach. Measure it again.",
    );
  });

  // A narrow beam axle at a lean of 89.9°: one wheel alone goes twice as far as both, 1146 mm a mm.
  it("tells what one wheel alone cannot reach: the gap, then the full stop", () => {
    const gap = (value: number) => leaning(89.9, { gap: exact(value), limits: [] });
    expect(refusal(budgetOf(gap(1000)))).toBe(
      "unreachable: The suspension cannot close the stop by 1000.0 mm. Check the readings.",
    );
    expect(refusal(budgetOf(gap(860)))).toBe(
      "unreachable: The suspension cannot close the stop by 890.0 mm. Check the readings.",
    );
    expect(budgetOf(gap(800)).ok).toBe(true);
  });
});

describe("a hard limit", () => {
  const kinematics = unwrapped(kinematicsOf({ kind: "strut", readings: {} }));
  const of = (...limits: HardLimit[]) =>
    travelToHardLimit({ side: "left", gap: exact(45), limits }, kinematics);

  it("is none where none was measured", () => {
    expect(unwrapped(of())).toBeNull();
  });

  it("is named by its kind where its reading cannot be", () => {
    expect(refusal(of(tyreLimit(exact(0))))).toBe(
      "lengthNotPositive (left.limits.0): The left clearance over the tyre must be above zero. Measure it again.",
    );
    expect(refusal(of({ ...tyreLimit(exact(60)), perWheel: 0 }))).toBe(
      "perWheelNotPositive (left.limits.0): The left clearance over the tyre must close by more than nothing per wheel travel.",
    );
  });

  it("is out of reach only where all are", () => {
    const far: HardLimit = { ...tyreLimit(exact(1e5)), perWheel: 0.05 };
    expect(refusal(of(far))).toBe(
      "limitOutOfReach (left.limits.0): The left clearance over the tyre is more than this suspension can move: it reaches 1000000.0 mm of wheel travel at most. Measure it again.",
    );
    expect(unwrapped(of(far, tyreLimit(exact(90))))).toEqual({
      travelMm: 90,
      kind: "tyre",
      index: 1,
    });
  });
});

describe("a budget by hand", () => {
  it("at the means: an angle that was not measured is 0", () => {
    const { budget, places } = unwrapped(budgetOf(strut));
    expect([...placeMeans(places)]).toEqual([0, 45, 60, 95]);
    // Full stop at 45 + 30; 20 mm left, 15 more than wanted; of the same build half of that is work.
    expect(budget).toMatchObject({ gapMm: 45, leverRatio: 1, contactMm: 45, fullStopMm: 75 });
    expect(budget.limit).toMatchObject({ reserveMm: 20, spacerMm: -15, tallerMm: -30 });
    expect(budget.oneWheel).toBeNull();
  });

  it("has no free share where the stop is met from the start and nothing is left", () => {
    const { budget } = unwrapped(
      budgetOf(uprightStrut({ gap: exact(0), limits: [tyreLimit(exact(1e-12))] })),
    );
    expect(budget.limit?.freeShare).toBe(0);
  });
});
