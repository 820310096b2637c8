import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type {
  Assessment,
  Check,
  Corner,
  CornerAssessment,
  Fitment,
  HardLimit,
  Interval,
  Reading,
} from "../../../src/physics/fitment.ts";
import { planRemeasure, type ToolsAtHand } from "../../../src/physics/remeasure/planRemeasure.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

const caliper = { id: "caliper", name: "a caliper", halfWidth: 0.1 };
const tools: ToolsAtHand = { "left.gap": [caliper], "left.limits.0": [caliper] };

/** The assessment with its checks as told, whatever the figures say. */
function withChecks(
  fitment: Fitment,
  checks: readonly Check[],
  change: Partial<CornerAssessment> = {},
): Assessment {
  const assessment = unwrapped(assessStatic(fitment, { samples: 10_000 }));
  const corner = assessment.corners[0] as CornerAssessment;
  return { ...assessment, corners: [{ ...corner, ...change, checks }] };
}

const unsure = (id: Check["id"], reading?: string): Check => ({
  id,
  state: "unsure",
  sentence: [`Not sure about ${id}.`],
  ...(reading === undefined ? {} : { reading }),
});

const near = uprightStrut({ gap: within(45, 4), limits: [tyreLimit(within(75, 0.1))] });

describe("a plan, where ride values are the doubt", () => {
  // The stop is met just where it is wanted unladen, so that P(z_c ≥ z_need) lies between the limits.
  const doubtful: Fitment = {
    ...uprightStrut({ gap: within(45, 0.5), limits: [tyreLimit(exact(95))] }),
    ride: { ...ride, tolerances: { damperBumpNsPerMm: 1.2, damperReboundNsPerMm: 1.2 } },
  };
  const needed = unwrapped(assessStatic(doubtful)).corners[0]?.freeTravelNeededUnladenMm ?? 0;
  const onTheEdge: Fitment = {
    ...doubtful,
    corners: doubtful.corners.map((corner) => ({ ...corner, gap: within(needed, 0.5) })),
  };

  it("has a width from the line, as the draws give no interval of it, and knows them closer", () => {
    const plan = planRemeasure(onTheEdge, withChecks(onTheEdge, [unsure("earlyContact")]), tools);
    expect(plan.level).toBe("unsure");
    const [first] = plan.items;
    expect(first?.reading).toMatch(/^ride\.damper(Bump|Rebound)NsPerMm$/);
    expect(first?.forecast?.way).toEqual({ kind: "halve" });
    expect(first?.forecast?.about).toBe("freeTravel");
    // More than half stays: the other damping is in doubt as before.
    const { halfWidthNowMm = 0, halfWidthThenMm = 0 } = first?.forecast ?? {};
    expect(halfWidthThenMm).toBeLessThan(halfWidthNowMm);
    expect(halfWidthThenMm).toBeGreaterThan(halfWidthNowMm / 2);
    expect(first && inModelUnits(first.sentence)).toMatch(
      /^Damping in (bump|rebound), known twice as exactly: takes the margin of error of the free travel against what is needed from ±\d+\.\d mm to ±\d+\.\d mm\.$/,
    );
  });
});

describe("a plan, where a ride value is missing", () => {
  it("asks for that alone, though the unladen travel is in doubt as well", () => {
    const { payloadPerCornerKg: _, ...unladen } = ride;
    const about = (gap: Reading) => uprightStrut({ gap, fitment: { ride: unladen } });
    const { corners } = unwrapped(assessStatic(about(exact(45)), { samples: 10_000 }));
    const onTheEdge = about(within(corners[0]?.freeTravelNeededUnladenMm ?? 0, 4));
    const plan = planRemeasure(onTheEdge, withChecks(onTheEdge, [unsure("earlyContact")]), tools);
    expect(plan.items.map(({ reading, why }) => [reading, why])).toEqual([
      ["ride.payloadPerCornerKg", "missing"],
    ]);
  });
});

describe("a plan for what no line describes", () => {
  const touching = (...halfWidths: readonly number[]): HardLimit[] =>
    halfWidths.map((halfWidth) => tyreLimit(within(75, halfWidth)));

  it("goes through the five readings with most of the margin of error, the greatest first", () => {
    const bent = uprightStrut({ gap: within(45, 0.1), limits: touching(3, 6, 2.5, 5, 4, 3.5) });
    const asked: PropertyKey[] = [];
    const watched: ToolsAtHand = new Proxy(
      {},
      {
        get: (_, id) => {
          asked.push(id);
          return [];
        },
      },
    );
    planRemeasure(bent, withChecks(bent, [unsure("clearance")]), watched);
    expect(asked).toEqual([1, 3, 4, 5, 0].map((index) => `left.limits.${index}`));
  });

  it("tries a dozen new means, also where a line describes the other side", () => {
    const bent = uprightStrut({ gap: within(45, 0.5), limits: touching(6, 6, 6) });
    const [left] = bent.corners;
    if (left === undefined) throw new Error("no corner");
    const straight: Corner = {
      ...left,
      side: "right",
      gap: within(45, 4),
      limits: [tyreLimit(exact(75))],
    };
    const both: Fitment = { ...bent, corners: [left, straight] };
    const assessment = unwrapped(assessStatic(both, { samples: 10_000 }));
    const checks = [unsure("clearance")];
    const open = {
      ...assessment,
      corners: assessment.corners.map((corner) => ({ ...corner, checks })),
    };
    const plan = planRemeasure(both, open, { "right.gap": [caliper] });
    const [only] = plan.items;
    expect(only?.reading).toBe("right.gap");
    // ±4 mm against ±0.2 mm: nearly every new mean settles the right side.
    const twelfths = 12 * (only?.forecast?.settlesQuestion ?? 0);
    expect(twelfths).toBeCloseTo(Math.round(twelfths), 9);
    expect(twelfths).toBeGreaterThan(9);
  });
});

describe("a plan that needs no more", () => {
  it("stops at what is sure enough together", () => {
    // The gap alone decides: ±4 mm about the limit, ±0.1 mm with a caliper, and a limit known well.
    const plan = planRemeasure(near, withChecks(near, [unsure("clearance", "left.gap")]), {
      ...tools,
      "left.limits.0": [{ ...caliper, halfWidth: 0.05 }],
    });
    expect(plan.items.filter(({ why }) => why === "doubt").map(({ reading }) => reading)).toEqual([
      "left.gap",
    ]);
    expect(plan.settlesAll).toBeGreaterThan(0.95);
    expect(plan.otherwise).toBeNull();
  });
});

describe("a plan without anything to take", () => {
  it("tells the check that a calculation failed on", () => {
    const assessment = withChecks(near, [unsure("stiffness", "stop.curve")]);
    const plan = planRemeasure(near, assessment, tools);
    expect(plan).toMatchObject({ level: "unsure", items: [], others: [], settlesAll: 0 });
    expect(plan.otherwise && inModelUnits(plan.otherwise)).toBe("Not sure about stiffness.");
  });

  it("says nothing where what is missing was passed over", () => {
    const open = uprightStrut({ limits: [] });
    const assessment = withChecks(open, [unsure("clearance", "left.limits.0")]);
    expect(planRemeasure(open, assessment, tools).items.map(({ reading }) => reading)).toEqual([
      "left.limits.0",
    ]);
    expect(planRemeasure(open, assessment, tools, ["left.limits.0"])).toEqual({
      level: "unsure",
      items: [],
      others: [],
      settlesAll: 0,
      otherwise: null,
    });
  });

  it("proposes nothing for a corner that can no longer be computed", () => {
    const assessment = withChecks(near, [unsure("clearance", "left.gap")]);
    const broken = uprightStrut({ gap: exact(-1) });
    expect(planRemeasure(broken, assessment, tools)).toMatchObject({ items: [], otherwise: null });
  });

  it("removes no share of an interval without width", () => {
    const point: Interval = [0, 0];
    const one = unwrapped(assessStatic(near)).corners[0] as CornerAssessment;
    const assessment = withChecks(near, [unsure("clearance", "left.gap")], {
      intervals: { ...one.intervals, reserveMm: point },
    });
    const [first] = planRemeasure(near, assessment, tools).items;
    expect(first?.forecast).toMatchObject({ halfWidthNowMm: 0, halfWidthThenMm: 0, removed: 0 });
  });
});
