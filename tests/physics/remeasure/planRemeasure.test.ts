import { describe, expect, it, vi } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import { planRemeasure } from "../../../src/physics/remeasure/planRemeasure.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { planFor, withLeft } from "./planFor.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

describe("the plan of what to measure again", () => {
  it("is empty where the verdict is settled", () => {
    expect(planFor(demoFitment("arm-fits"))).toEqual({
      level: null,
      items: [],
      others: [],
      settlesAll: 1,
      otherwise: null,
    });
    expect(planFor(demoFitment("arm-needs-taller")).level).toBeNull();
  });

  it("puts what was never measured first, for nothing is decided without it", () => {
    const [left, right] = demoFitment("arm-fits").corners;
    if (!left || !right) throw new Error("no corners");
    const { cornerMassKg: _, ...unweighed } = right;
    const plan = planFor({
      ...demoFitment("arm-fits"),
      corners: [{ ...left, limits: [], gap: within(28, 3) }, unweighed],
    });
    expect(plan.items.map(({ reading, why }) => [reading, why])).toEqual([
      ["left.limits.0", "missing"],
      ["right.cornerMassKg", "missing"],
    ]);
    expect(plan.otherwise).toBeNull();
  });

  it("puts a reading that cannot be right before all else, also where a check fails by it", () => {
    const slipped = withLeft(demoFitment("arm-fits"), { gap: within(21 * 25.4, 1) });
    const assessed = assessFitment(slipped);
    if (assessed.ok) {
      expect(planFor(slipped).items[0]).toMatchObject({ reading: "left.gap", why: "implausible" });
    }
    const scattered = withLeft(demoFitment("arm-fits"), { gap: { values: [20, 24], tol: 0.5 } });
    expect(planFor(scattered).items[0]).toMatchObject({ reading: "left.gap", why: "implausible" });
  });

  it("says what it does in one sentence", () => {
    const plan = planFor(withLeft(demoFitment("arm-fits"), { gap: within(28, 3) }));
    expect(plan.items[0]?.sentence && inModelUnits(plan.items[0].sentence)).toMatch(
      /^Left gap, again with a caliper \(±0\.2 mm\): takes the margin of error of the left reserve from ±\d+\.\d mm to ±\d\.\d mm\.$/,
    );
  });

  it("does not propose again what was taken or passed over in this walk", () => {
    const fitment = withLeft(demoFitment("arm-fits"), { gap: within(28, 3) });
    expect(planFor(fitment, ["left.gap"]).items.map(({ reading }) => reading)).not.toContain(
      "left.gap",
    );
  });

  it("goes on from “take care” to “fits” only where nothing else holds it there", () => {
    const careful = withLeft(demoFitment("arm-fits"), { gap: within(24.5, 3) });
    expect(planFor(careful)).toMatchObject({ level: "care" });
    const early = demoFitment("axle-towing-early");
    expect(planFor(early).level).toBeNull();
  });

  it("says plainly where no tool at hand would settle it, and what would", () => {
    const fitment = uprightStrut({ gap: within(65, 1), limits: [tyreLimit(within(95, 1))] });
    const plan = planRemeasure(fitment, unwrapped(assessFitment(fitment)), {});
    expect(plan.items).toEqual([]);
    expect(plan.settlesAll).toBe(0);
    expect(plan.otherwise && inModelUnits(plan.otherwise)).toMatch(
      /^Re-measuring with the tools at hand would not settle it: .*spacer of .* qualified person go through the whole travel by hand/,
    );
  });

  it("sends an estimated curve to a test, not to the tape", () => {
    const fitment = uprightStrut({ gap: within(45, 1) });
    const estimated = {
      ...fitment,
      stop: {
        ...fitment.stop,
        duty: "carry" as const,
        estimated: { how: "rubber block", forceShare: 0.9 },
      },
      ride: { ...fitment.ride, payloadPerCornerKg: 50 },
    };
    const plan = planFor(estimated);
    const words = plan.otherwise ? inModelUnits(plan.otherwise) : "";
    expect(plan.level).not.toBeNull();
    expect(words).toContain("Have the stop tested");
    expect(plan.items.map(({ reading }) => reading)).not.toContain("stop.curve");
  });
});
