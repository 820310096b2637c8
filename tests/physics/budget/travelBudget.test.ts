import { describe, expect, it } from "vitest";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment } from "../../../src/physics/fitment.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";

function budgetOf(fitment: Fitment, reserveWanted = 5) {
  return travelBudget(fitment, fitment.corners[0] as Corner, reserveWanted);
}

function refusal(fitment: Fitment): string {
  const outcome = budgetOf(fitment);
  if (outcome.ok) return "none";
  const { code, reading, sentence } = outcome.fault;
  return `${code} ${reading}: ${inModelUnits(sentence)}`;
}

/** An arm of 411 mm, level, whose stop stands square at 152 mm: R = 411/152, reach ± 411 mm. */
function levelArm(gap: number, usable = 40, limit = 120): Fitment {
  const strut = uprightStrut({ gap: exact(gap), limits: [tyreLimit(exact(limit))] });
  return {
    ...strut,
    layout: {
      kind: "arm",
      wheelPerOuter: 1,
      readings: {
        pivotToStop: exact(152),
        pivotToOuter: exact(411),
        armAngle: exact(0),
        stopLean: exact(0),
      },
    },
    stop: { ...strut.stop, freeHeight: exact(300), usableCompressionMm: usable },
  };
}

describe("the travel budget of an upright strut, in sums", () => {
  const budgetOfStrut = () =>
    unwrapped(budgetOf(uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] }))).budget;

  it("meets the stop after the gap and presses it 30 mm on", () => {
    const budget = budgetOfStrut();
    expect(budget.gapMm).toBe(45);
    expect(budget.leverRatio).toBeCloseTo(1, 12);
    expect(budget.contactMm).toBeCloseTo(45, 12);
    expect(budget.fullStopMm).toBeCloseTo(75, 12);
    expect(budget.oneWheel).toBeNull();
  });

  it("has 20 mm of reserve, 15 more than wanted, of which a stop of half build takes twice as much", () => {
    const budget = budgetOfStrut();
    expect(budget.limit).toMatchObject({ kind: "tyre", id: "left.limits.0" });
    expect(budget.limit?.hardLimitMm).toBeCloseTo(95, 12);
    expect(budget.limit?.closingMm).toBeCloseTo(95, 12);
    expect(budget.limit?.reserveMm).toBeCloseTo(20, 12);
    expect(budget.limit?.spacerMm).toBeCloseTo(-15, 12);
    expect(budget.limit?.tallerMm).toBeCloseTo(-30, 12);
  });

  it("shares its travel up to full stop, or up to the limit where that comes first", () => {
    const budget = budgetOfStrut();
    expect(budget.freeShare).toBeCloseTo(45 / 75, 12);
    const short = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(60))] });
    expect(unwrapped(budgetOf(short)).budget.freeShare).toBeCloseTo(45 / 60, 12);
  });

  it("has no share of no travel, and of next to none", () => {
    for (const least of [1e-308, 5e-324]) {
      const none = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(least))] });
      expect(unwrapped(budgetOf(none)).budget.freeShare).toBeNull();
    }
  });

  it("has no limit where none was measured", () => {
    expect(unwrapped(budgetOf(uprightStrut({ limits: [] }))).budget.limit).toBeNull();
  });
});

describe("a beam axle with one wheel up", () => {
  it("takes (T + S)/2T of the travel of both", () => {
    const axle: Fitment = {
      ...uprightStrut({ gap: exact(45) }),
      layout: {
        kind: "axle",
        readings: { track: exact(1600), stopSpacing: exact(960), stopLean: exact(0) },
      },
    };
    const { budget } = unwrapped(budgetOf(axle));
    expect(budget.contactMm).toBeCloseTo(45, 12);
    expect(budget.oneWheel?.leverRatio).toBeCloseTo(1 / 0.8, 12);
    expect(budget.oneWheel?.contactMm).toBeCloseTo(45 / 0.8, 12);
    expect(budget.oneWheel?.fullStopMm).toBeCloseTo(75 / 0.8, 12);
  });
});

describe("a budget that cannot be", () => {
  it("names a gap that is more than the arm can close", () => {
    expect(refusal(levelArm(153))).toBe(
      "gapOutOfReach left.gap: The left gap, 153.0 mm, is more than this suspension can close. Re-measure it and the arm's readings.",
    );
    expect(budgetOf(levelArm(100)).ok).toBe(true);
  });

  it("names a stop that the arm cannot press", () => {
    expect(refusal(levelArm(130))).toBe(
      "fullStopOutOfReach left.gap: This suspension cannot press the stop by its usable 40.0 mm after the left gap of 130.0 mm. Re-measure the gap and the arm's readings.",
    );
  });
});
