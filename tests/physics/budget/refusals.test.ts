import { describe, expect, it } from "vitest";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment, HardLimit, Layout } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";
import { atMeansOf } from "./preparedModel.ts";

const strut = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] });

function budgetOf(fitment: Fitment, reserveWanted = 5) {
  return travelBudget(fitment, fitment.corners[0] as Corner, reserveWanted);
}

describe("a budget that cannot be made", () => {
  it("names a layout without motion", () => {
    const flat: Layout = { kind: "strut", readings: { stopLean: exact(89.96) } };
    expect(refusal(budgetOf({ ...strut, layout: flat }))).toBe(
      "stopLeansFlat (stopLean): The stop lies flat, so the wheel cannot close it. Re-measure its lean.",
    );
  });

  it("names a reading that only it takes: the stop's free height", () => {
    const stop = { ...strut.stop, freeHeight: exact(0) };
    expect(refusal(budgetOf({ ...strut, stop }))).toBe(
      "lengthNotPositive (stop.freeHeight): The free height of the stop must be above zero. Re-measure it.",
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
      "gapOutOfReach (left.gap): The left gap, 101.0 mm, is more than this suspension can close. Re-measure it and the arm's readings.",
    );
    expect(refusal(budgetOf(onArm(85)))).toBe(
      "fullStopOutOfReach (left.gap): This suspension cannot press the stop by its usable 30.0 mm after the left gap of 85.0 mm. Re-measure the gap and the arm's readings.",
    );
  });

  it("names the limit where what is wanted before it lies out of reach", () => {
    expect(refusal(budgetOf(strut, 2e6))).toBe(
      "limitOutOfReach (left.limits.0): The hard contact lies where this suspension cannot reach. Re-measure it.",
    );
  });
});

describe("a hard limit", () => {
  const of = (...limits: HardLimit[]) => atMeansOf(uprightStrut({ gap: exact(45), limits }));

  it("is none where none was measured", () => {
    expect(unwrapped(of()).limit).toBeNull();
  });

  it("is named by its kind where its reading cannot be", () => {
    expect(refusal(of(tyreLimit(exact(0))))).toBe(
      "lengthNotPositive (left.limits.0): The left clearance over the tire must be above zero. Re-measure it.",
    );
    expect(refusal(of({ ...tyreLimit(exact(60)), perWheel: 0 }))).toBe(
      "perWheelNotPositive (left.limits.0): The left clearance over the tire must close by more than nothing per wheel travel.",
    );
  });

  it("is out of reach only where all are", () => {
    const far: HardLimit = { ...tyreLimit(exact(1e5)), perWheel: 0.05 };
    expect(refusal(of(far))).toBe(
      "limitOutOfReach (left.limits.0): The left clearance over the tire is more than this suspension can move: it reaches 1000000.0 mm of wheel travel at most. Re-measure it.",
    );
    expect(unwrapped(of(far, tyreLimit(exact(90)))).limit).toEqual({
      travelMm: 90,
      kind: "tyre",
      id: "left.limits.1",
      index: 1,
    });
  });
});

describe("a budget by hand", () => {
  it("at the means: an angle that was not measured is 0", () => {
    const { budget } = unwrapped(budgetOf(strut));
    // Full stop at 45 + 30; 20 mm left, 15 more than wanted; of the same build half of that is work.
    expect(budget).toMatchObject({ gapMm: 45, leverRatio: 1, contactMm: 45, fullStopMm: 75 });
    expect(budget.limit).toMatchObject({ reserveMm: 20, spacerMm: -15, tallerMm: -30 });
    expect(budget.oneWheel).toBeNull();
  });

  it("has no free share where the stop is met from the start and nothing is left", () => {
    const { budget } = unwrapped(
      budgetOf(uprightStrut({ gap: exact(0), limits: [tyreLimit(exact(1e-12))] })),
    );
    expect(budget.freeShare).toBe(0);
  });
});
