import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { planRemeasure } from "../../../src/physics/remeasure/planRemeasure.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { anyFitment } from "../staticFitments.ts";

const ids = [
  ...["pivotToStop", "pivotToOuter", "pivotToMount", "damperLength", "track", "stopSpacing"],
  ...["armAngle", "stopLineAngle", "stopLean"],
  ...["left", "right"].flatMap((side) => [
    `${side}.gap`,
    ...[0, 1, 2].map((index) => `${side}.limits.${index}`),
  ]),
];
const tools = Object.fromEntries(
  ids.map((id) => [id, [{ id: "caliper", name: "a caliper", halfWidth: 0.1 }]]),
);

describe("a plan for whatever was measured", () => {
  it("has chances and shares from 0 to 1, never less width before than after, in its order", () => {
    fc.assert(
      fc.property(anyFitment, (fitment) => {
        const assessed = assessStatic(fitment, { samples: 10_000 });
        if (!assessed.ok) return;
        const plan = planRemeasure(fitment, assessed.value, tools);
        expect(plan.settlesAll).toBeGreaterThanOrEqual(0);
        expect(plan.settlesAll).toBeLessThanOrEqual(1.000001);
        const forecasts = plan.items.flatMap(({ forecast }) => forecast ?? []);
        for (const each of forecasts) {
          for (const share of [each.removed, each.settlesQuestion, each.settlesVerdict]) {
            expect(share).toBeGreaterThanOrEqual(0);
            expect(share).toBeLessThanOrEqual(1.000001);
          }
          expect(each.halfWidthThenMm).toBeLessThanOrEqual(each.halfWidthNowMm);
        }
        const chances = forecasts.map(({ settlesVerdict }) => Math.round(100 * settlesVerdict));
        expect(chances).toEqual([...chances].sort((a, b) => b - a));
        const firstDoubt = plan.items.findIndex(({ why }) => why === "doubt");
        const lastMissing = plan.items.findLastIndex(({ why }) => why !== "doubt");
        if (firstDoubt >= 0) expect(lastMissing).toBeLessThan(firstDoubt);
        for (const { sentence } of plan.items) {
          expect(inModelUnits(sentence)).not.toMatch(/NaN|Infinity|undefined/);
        }
      }),
      { numRuns: 40 },
    );
  });
});
