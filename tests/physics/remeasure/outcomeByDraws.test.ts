import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { CheckId, CornerAssessment, Fitment } from "../../../src/physics/fitment.ts";
import type { RemeasureOutcome } from "../../../src/physics/remeasure/linearDoubt.ts";
import type { Margin } from "../../../src/physics/remeasure/margin.ts";
import type { RemeasureLevel } from "../../../src/physics/remeasure/openQuestions.ts";
import {
  halfWidthAfter,
  outcomeByDraws,
  readingAfter,
} from "../../../src/physics/remeasure/outcomeByDraws.ts";
import type { AfterReading } from "../../../src/physics/remeasure/readAgain.ts";
import { drawnReading } from "../../../src/physics/uncertainty/drawnReading.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

function marginFor(fitment: Fitment, id: CheckId = "clearance"): Margin {
  const assessed = unwrapped(assessStatic(fitment, { samples: 10_000 }));
  const corner = assessed.corners[0] as CornerAssessment;
  const check = corner.checks.find((each) => each.id === id);
  if (check === undefined) throw new Error(`no check ${id}`);
  return {
    question: { side: "left", check, why: "doubt", readings: [] },
    about: id === "clearance" ? "reserve" : "freeTravel",
    middle: 0,
    parts: [],
    interval: corner.intervals.reserveMm,
    probability: null,
    inReach: true,
  };
}

const narrow = (halfWidth: number, shiftTo: number): AfterReading => ({
  halfWidth,
  standardError: 0,
  shift: { halfWidths: [shiftTo], standardDeviation: 0 },
});

function tried(
  fitment: Fitment,
  after: AfterReading,
  level: RemeasureLevel = "unsure",
  { margins = [marginFor(fitment)], blocked = false } = {},
): RemeasureOutcome {
  const gap = drawnReading("left.gap", fitment.corners[0]?.gap ?? exact(0));
  const steps = outcomeByDraws(fitment, margins, level, blocked, gap, after);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** Full stop at gap + 30 mm; the tire touches at 75 mm. */
const strutOf = (gap: number, tol: number) =>
  uprightStrut({ gap: within(gap, tol), limits: [tyreLimit(exact(75))] });

describe("a reading taken again, through the whole formulas", () => {
  it("settles the question at half of the new means where the old one stands on the limit", () => {
    const found = tried(strutOf(45, 4), narrow(0.01, 4));
    expect(found.settled[0]).toBeCloseTo(1, 9);
    expect(found.verdict).toBeCloseTo(1, 9);
    // 95 % of a rectangular ±0.01 mm.
    expect(found.halfWidths[0]).toBeCloseTo(0.0095, 3);
  });

  it("settles nothing where the doubt stays", () => {
    const found = tried(strutOf(45, 4), narrow(4, 0.001));
    expect(found).toMatchObject({ settled: [0], verdict: 0 });
  });

  it("settles the verdict by failing alone where something else keeps it open", () => {
    const found = tried(strutOf(45, 4), narrow(0.01, 4), "unsure", {
      margins: [marginFor(strutOf(45, 4))],
      blocked: true,
    });
    // Gaps above 45 mm fail: six of the twelve means.
    expect(found.verdict).toBeCloseTo(0.5, 9);
    expect(found.settled[0]).toBeCloseTo(1, 9);
  });

  it("from “take care”, sure of the reserve wanted or sure to lack it", () => {
    // A reserve of 5 mm at 40 mm of gap: kept for certain below, lacking for certain above.
    const found = tried(strutOf(40, 2), narrow(0.01, 2), "care");
    expect(found.settled[0]).toBeCloseTo(1, 9);
    expect(found.verdict).toBeCloseTo(1, 9);
    const still = tried(strutOf(40, 2), narrow(2, 0.001), "care");
    expect(still).toMatchObject({ settled: [0], verdict: 0 });
  });

  it("from “take care” of a check that carries no probability: it has failed", () => {
    const carry = uprightStrut({ gap: within(45, 1) });
    const carried: Fitment = {
      ...carry,
      stop: { ...carry.stop, duty: "carry" },
      ride: { ...carry.ride, payloadPerCornerKg: 190 },
    };
    const found = tried(carried, narrow(0.01, 0.1), "care", {
      margins: [marginFor(carried, "earlyContact")],
    });
    expect(found.verdict).toBeCloseTo(1, 9);
  });

  it("from “take care”, only lacking it settles the verdict where something else keeps it open", () => {
    const margins = [marginFor(strutOf(40, 2))];
    const found = tried(strutOf(40, 2), narrow(0.01, 2), "care", { margins, blocked: true });
    expect(found.settled[0]).toBeCloseTo(1, 9);
    expect(found.verdict).toBeCloseTo(0.5, 9);
  });

  it("where only the verdict was open, “take care” is a decision", () => {
    // A reserve of 5 ± 4 mm: never below 0, and the wanted 5 mm as likely as not.
    const margins = [marginFor(strutOf(40, 4))];
    const found = tried(strutOf(40, 4), narrow(4, 0.001), "unsure", { margins });
    expect(found.settled[0]).toBeCloseTo(1, 9);
    expect(found.verdict).toBeCloseTo(1, 9);
    expect(tried(strutOf(40, 4), narrow(4, 0.001), "care", { margins })).toMatchObject({
      settled: [0],
      verdict: 0,
    });
    const held = tried(strutOf(40, 4), narrow(4, 0.001), "unsure", { margins, blocked: true });
    expect(held.verdict).toBe(0);
  });

  it("one of two checks that fails settles the verdict, the other still open", () => {
    const at = strutOf(45, 4);
    const other = {
      ...marginFor(at),
      question: { ...marginFor(at).question, check: { id: "balance", state: "unsure" } },
    } as Margin;
    // No such check is made of one corner: it stays open.
    const margins = [marginFor(at), other];
    const found = tried(at, narrow(0.01, 4), "unsure", { margins, blocked: true });
    expect(found.settled).toEqual([expect.closeTo(1, 9), 0]);
    expect(found.verdict).toBeCloseTo(0.5, 9);
  });

  /** Share of the new means that fail, at a reserve of `margin` mm. */
  const failing = (margin: number, shift: AfterReading["shift"]) => {
    const at = strutOf(45 - margin, 4);
    const after = { halfWidth: 0.01, standardError: 0, shift };
    return tried(at, after, "unsure", { margins: [marginFor(at)], blocked: true }).verdict;
  };

  it("moves by the sum of both doubts, each drawn apart", () => {
    // A triangle over ±8 mm: a twelfth of it lies past 4.73, on average at 5.82; the next at 4.0.
    const shift = { halfWidths: [4, 4], standardDeviation: 0 };
    expect(failing(5, shift)).toBeCloseTo(1 / 12, 9);
    expect(failing(7, shift)).toBe(0);
  });

  it("moves by the scatter as well", () => {
    // Of a normal of 3 mm the twelfths lie at 1.84, 1.16, 0.81 … deviations: two are past one.
    expect(failing(3, { halfWidths: [], standardDeviation: 3 })).toBeCloseTo(2 / 12, 9);
    expect(failing(3, { halfWidths: [], standardDeviation: 0 })).toBe(0);
  });

  it("looks at the side and the figure that each margin is about", () => {
    const [corner] = strutOf(45, 4).corners;
    if (corner === undefined) throw new Error("no corner");
    const far = { ...corner, gap: within(20, 1) };
    const right = { ...corner, side: "right" as const, limits: [tyreLimit(within(75, 6))] };
    const both: Fitment = { ...strutOf(45, 4), corners: [far, right] };
    const assessed = unwrapped(assessStatic(both, { samples: 10_000 })).corners[1];
    const check = assessed?.checks.find(({ id }) => id === "clearance");
    if (check === undefined) throw new Error("no check");
    const onRight: Margin = {
      ...marginFor(strutOf(45, 4)),
      question: { side: "right", check, why: "doubt", readings: [] },
    };
    const gap = drawnReading("right.gap", within(45, 4));
    const after = narrow(1, 4);
    const steps = outcomeByDraws(both, [onRight], "unsure", false, gap, after);
    let step = steps.next();
    while (!step.done) step = steps.next();
    // The left side is sure at once; the limit of ±6 mm keeps the right one open: ±5.4 mm to pass.
    expect(step.value.settled).toEqual([0]);
    // Flat within ±5, down to 0 at ±7: 95 % lie within ±(7 − √1.2).
    expect(step.value.halfWidths[0]).toBeCloseTo(7 - Math.sqrt(1.2), 1);
    const travel = halfWidthAfter(both, { ...onRight, about: "freeTravel" }, gap, after);
    expect(travel).toBeCloseTo(0.95, 1);
  });

  it("settles nothing by a new mean that cannot be assessed", () => {
    const found = tried(strutOf(1, 3), narrow(0.01, 3));
    expect(found.settled[0]).toBeGreaterThan(0);
    // A third of −2 … 4 mm lies below a gap of 0: four of the twelve means.
    expect(found.settled[0]).toBeCloseTo(8 / 12, 9);
  });

  it("has no width where the reading itself cannot be assessed", () => {
    const margins = [marginFor(strutOf(45, 4))];
    const lost = tried(strutOf(-1, 3), narrow(0.01, 0.1), "unsure", { margins });
    expect(lost).toEqual({ halfWidths: [0], settled: [0], verdict: 0 });
  });
});

describe("the width that one assessment gives afterwards", () => {
  const fitment = strutOf(45, 4);
  const gap = drawnReading("left.gap", within(45, 4));
  const margin = marginFor(fitment);

  it("is that of the new ±: 95 % of a rectangular ±0.5 mm", () => {
    expect(halfWidthAfter(fitment, margin, gap, narrow(0.5, 4))).toBeCloseTo(0.475, 2);
  });

  it("is none where the margin has no interval, nor where nothing is left in doubt or to assess", () => {
    const after = narrow(0.5, 4);
    expect(halfWidthAfter(fitment, { ...margin, interval: null }, gap, after)).toBeNull();
    expect(halfWidthAfter(fitment, margin, gap, narrow(0, 4))).toBeNull();
    const negative = drawnReading("left.gap", within(-1, 4));
    expect(halfWidthAfter(fitment, margin, negative, after)).toBeNull();
    const { interval: _, ...rest } = margin;
    const open = uprightStrut({ gap: within(45, 4), limits: [] });
    expect(halfWidthAfter(open, { ...rest, interval: [0, 1] }, gap, after)).toBeNull();
  });
});

describe("what a reading is expected to be", () => {
  it("two values with its scatter, or one without", () => {
    const gap = drawnReading("left.gap", within(45, 4));
    const scattering = { ...narrow(1, 0), standardError: 0.5 };
    const after = readingAfter(gap, scattering, 2);
    expect(after).toEqual({ values: [46.5, 47.5], tol: 1 });
    expect(drawnReading("left.gap", after).standardError).toBeCloseTo(0.5, 12);
    expect(readingAfter(gap, narrow(1, 0), 2)).toEqual({ values: [47], tol: 1 });
  });
});
