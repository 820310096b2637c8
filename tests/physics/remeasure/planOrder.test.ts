import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type {
  Assessment,
  Check,
  Corner,
  Fitment,
  HardLimit,
  Reading,
  Side,
} from "../../../src/physics/fitment.ts";
import {
  planRemeasure,
  type RemeasurePlan,
  type ToolsAtHand,
} from "../../../src/physics/remeasure/planRemeasure.ts";
import type { BetterTool } from "../../../src/physics/remeasure/readAgain.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

/*
 * On an upright strut the reserve is limit − gap − 30 mm, so that what is expected of a reading taken again
 * can be worked out by hand: a sum of rectangular parts.
 */

const tool = (halfWidth: number, name = "a caliper"): BetterTool => ({
  id: `${name} ${halfWidth}`,
  name,
  halfWidth,
});

const unsure = (id: Check["id"], reading?: string): Check => ({
  id,
  state: "unsure",
  sentence: [`Not sure about ${id}.`],
  ...(reading === undefined ? {} : { reading }),
});

interface Asked {
  readonly side: Side;
  readonly checks: readonly Check[];
}

/** The plan where these checks are open and no others. */
function planFor(fitment: Fitment, asked: readonly Asked[], tools: ToolsAtHand): RemeasurePlan {
  const assessment = unwrapped(assessStatic(fitment, { samples: 10_000 }));
  const corners = assessment.corners.map((corner) => ({
    ...corner,
    checks: asked.find(({ side }) => side === corner.side)?.checks ?? [],
  }));
  return planRemeasure(fitment, { ...assessment, corners } as Assessment, tools);
}

const leftOpen: readonly Asked[] = [{ side: "left", checks: [unsure("clearance")] }];

function strut(gap: Reading, ...limits: readonly HardLimit[]): Fitment {
  return uprightStrut({ gap, limits });
}

function withRight(fitment: Fitment, change: Partial<Corner>): Fitment {
  const [left] = fitment.corners;
  if (left === undefined) throw new Error("no corner");
  return { ...fitment, corners: [left, { ...left, side: "right", ...change }] };
}

const readings = ({ items }: RemeasurePlan) => items.map(({ reading }) => reading);
const words = ({ otherwise }: RemeasurePlan) => otherwise && inModelUnits(otherwise);

describe("the order of a plan", () => {
  it("is by what each would settle, not by whose doubt is the greatest", () => {
    // A reserve of 2 mm. Limit ±3.9 to ±0.1: 0.9·4 = 3.6 is left, so a shift past 1.6 settles it, of ±3.9 mm
    // 2.3/7.8 = 0.29. Gap ±4 to ±3.2: (7.1 − w)² = 0.05·8·3.9·3.2, w = 4.87, so past 2.87 of ±4 ± 3.2 mm:
    // 4.33²/(8·4·3.2) = 0.18.
    const plan = planFor(strut(within(43, 4), tyreLimit(within(75, 3.9))), leftOpen, {
      "left.gap": [tool(3.2)],
      "left.limits.0": [tool(0.1)],
    });
    expect(readings(plan)).toEqual(["left.limits.0", "left.gap"]);
    const chances = plan.items.map(({ forecast }) => forecast?.settlesVerdict ?? 0);
    expect(Math.abs((chances[0] ?? 0) - 0.29)).toBeLessThan(0.02);
    expect(Math.abs((chances[1] ?? 0) - 0.18)).toBeLessThan(0.02);
  });
});

describe("what a plan says of each reading", () => {
  const fitment = strut(within(45, 4), tyreLimit(within(75, 1)));
  const plan = () => planFor(fitment, leftOpen, { "left.gap": [tool(0.2)] });

  it("is the width that the assessment has afterwards, to the last digit", () => {
    const [first] = plan().items;
    const half = (gap: Reading) => {
      const after = strut(gap, tyreLimit(within(75, 1)));
      const interval = unwrapped(assessStatic(after)).corners[0]?.intervals.reserveMm;
      return interval ? (interval[1] - interval[0]) / 2 : 0;
    };
    const { halfWidthNowMm = 0, halfWidthThenMm = 0, removed } = first?.forecast ?? {};
    expect(halfWidthThenMm).toBe(half(within(45, 0.2)));
    expect(removed).toBeCloseTo(1 - halfWidthThenMm / halfWidthNowMm, 12);
    // A sum of ±4 and ±1 is past w, either way, with (5 − w)²/(4·4·1): 0.05 of it.
    expect(halfWidthNowMm).toBeCloseTo(5 - Math.sqrt(0.05 * 16), 1);
  });

  it("names the limit by its kind", () => {
    const limits = [tyreLimit(within(75, 4))];
    const about = planFor(strut(exact(45), ...limits), leftOpen, { "left.limits.0": [tool(0.1)] });
    expect(about.items[0] && inModelUnits(about.items[0].sentence)).toMatch(
      /^Left clearance over the tire, again with a caliper/,
    );
  });
});

describe("three limits that touch almost together", () => {
  const limits = (["tyre", "metal", "spring"] as const).map((kind): HardLimit => {
    return { ...tyreLimit(within(75, 6)), kind };
  });
  const plan = () =>
    planFor(strut(within(45, 0.5), ...limits), leftOpen, {
      "left.limits.0": [tool(0.25), tool(0.2)],
      "left.limits.1": [tool(4)],
    });

  it("are worked out with the best tool at hand alone", () => {
    const first = plan().items.find(({ reading }) => reading === "left.limits.0");
    expect(first?.forecast?.way).toEqual({ kind: "tool", tool: tool(0.2) });
  });

  it("are told by the share of the margin of error that goes, and settled as often as the best one does", () => {
    const { items, settlesAll } = plan();
    const forecasts = items.flatMap(({ forecast }) => forecast ?? []);
    expect(forecasts.length).toBeGreaterThan(0);
    for (const { removed, halfWidthNowMm, halfWidthThenMm } of forecasts) {
      expect(removed).toBeCloseTo(1 - halfWidthThenMm / halfWidthNowMm, 12);
    }
    expect(settlesAll).toBe(Math.max(...forecasts.map(({ settlesVerdict }) => settlesVerdict)));
    expect(settlesAll).toBeGreaterThan(0.2);
  });
});

describe("two sides", () => {
  const left = strut(within(20, 1), tyreLimit(exact(75)));

  it("each have their own figures: the right one open, by its own gap", () => {
    const fitment = withRight(left, { gap: within(45, 4) });
    const asked: readonly Asked[] = [{ side: "right", checks: [unsure("clearance")] }];
    const plan = planFor(fitment, asked, { "right.gap": [tool(0.1)], "left.gap": [tool(0.1)] });
    expect(readings(plan)).toEqual(["right.gap"]);
    expect(plan.items[0]?.forecast?.halfWidthNowMm).toBeCloseTo(3.8, 1);
    expect(plan.settlesAll).toBeGreaterThan(0.9);
    expect(plan.items[0] && inModelUnits(plan.items[0].sentence)).toContain("the right reserve");
    expect(words(planFor(fitment, asked, {}))).toContain(
      "the right reserve is too close to the limit",
    );
  });

  it("settle the verdict only by failing while the other lacks a limit", () => {
    const fitment = withRight(strut(within(45, 4), tyreLimit(exact(75))), { limits: [] });
    const asked: readonly Asked[] = [...leftOpen, { side: "right", checks: [unsure("clearance")] }];
    const plan = planFor(fitment, asked, { "left.gap": [tool(0.01)] });
    expect(plan.items.map(({ reading, why }) => [reading, why])).toEqual([
      ["right.limits.0", "missing"],
      ["left.gap", "doubt"],
    ]);
    expect(Math.abs(plan.settlesAll - 0.5)).toBeLessThan(0.03);
    // What is missing may settle it, so that nothing is said to be hopeless.
    expect(planFor(fitment, asked, {}).otherwise).toBeNull();
  });
});

describe("what a plan cannot settle", () => {
  it("even with every reading taken again, is said so", () => {
    // ±3 and ±4 mm: 95 % within 7 − √2.4; with the gap at ±1.5 within 5.5 − √1.2, a fifth less. The new
    // mean moves by ±3 and ±1.5 and must pass 5.5 − √2.4 = 3.95 mm: (4.5 − 3.95)²/18 = 0.017.
    const plan = planFor(strut(within(45, 3), tyreLimit(within(75, 4))), leftOpen, {
      "left.gap": [tool(1.5)],
    });
    expect(readings(plan)).toEqual(["left.gap"]);
    expect(plan.items[0]?.forecast?.removed).toBeCloseTo(0.19, 1);
    expect(Math.abs(plan.settlesAll - 0.017)).toBeLessThan(0.01);
    expect(words(plan)).toMatch(/^Even with every reading re-measured/);
  });

  it("a reading that a calculation failed on is asked for, the curve never", () => {
    const failed = (reading: string): readonly Asked[] => [
      { side: "left", checks: [unsure("stiffness", reading)] },
    ];
    const fitment = strut(exact(45), tyreLimit(exact(95)));
    expect(planFor(fitment, failed("left.gap"), {}).items).toEqual([
      {
        reading: "left.gap",
        why: "fault",
        forecast: null,
        sentence: expect.anything(),
      },
    ]);
    expect(planFor(fitment, failed("stop.curve"), {}).items).toEqual([]);
  });
});
