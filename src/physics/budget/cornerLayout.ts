import type { Corner, Fitment } from "../fitment.ts";
import { type LayoutPlan, layoutPlan } from "../kinematics/layoutPlan.ts";
import { planFault } from "../kinematics/planFault.ts";
import type { Outcome } from "../outcome.ts";

/**
 * The layout of one corner with a motion of its own, that its mean readings can move. Errors: those of
 * `layoutPlan` and `planFault`.
 */
export function cornerLayout(
  { layout }: Pick<Fitment, "layout">,
  corner: Corner,
): Outcome<LayoutPlan> {
  const plan = layoutPlan(layout, corner);
  if (!plan.ok) return plan;
  const fault = planFault(plan.value);
  return fault === null ? plan : { ok: false, fault };
}
