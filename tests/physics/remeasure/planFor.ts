import { assessFitment } from "../../../src/physics/assess.ts";
import type { Corner, Fitment } from "../../../src/physics/fitment.ts";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import { planRemeasure, type RemeasurePlan } from "../../../src/physics/remeasure/planRemeasure.ts";
import { unwrapped } from "../demoFitments.ts";

export const caliper = { id: "caliper", name: "a caliper", halfWidth: 0.2 };
const gauge = { id: "gauge", name: "a digital angle gauge", halfWidth: 0.2 };
const tools = {
  "left.gap": [caliper],
  "right.gap": [caliper],
  "left.limits.0": [caliper],
  "left.limits.1": [caliper],
  pivotToStop: [caliper],
  armAngle: [gauge],
};

/** The plan with a caliper and a digital angle gauge at hand. */
export function planFor(fitment: Fitment, passed: readonly ReadingId[] = []): RemeasurePlan {
  return planRemeasure(fitment, unwrapped(assessFitment(fitment)), tools, passed);
}

/** The same vehicle with its left corner changed. */
export function withLeft(fitment: Fitment, change: Partial<Corner>): Fitment {
  return {
    ...fitment,
    corners: fitment.corners.map((corner) =>
      corner.side === "left" ? { ...corner, ...change } : corner,
    ),
  };
}
