import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { AgainPlan, ToolsAtHand } from "../../physics/remeasure/planAgain.ts";

/** What to measure again for a complete assessment, worked out beside the screen; null: not known yet. */
export function useAgainPlan(
  assessor: Assessor,
  fitment: Fitment | null,
  assessment: Assessment | null,
  tools: ToolsAtHand,
  passed: readonly string[],
): AgainPlan | null {
  const [plan, setPlan] = useState<{ of: Assessment; plan: AgainPlan } | null>(null);
  const left = passed.join(" ");
  useEffect(() => {
    if (!fitment || !assessment) return;
    return assessor.planAgain(
      fitment,
      assessment,
      tools,
      {
        onPlan: (made) => setPlan({ of: assessment, plan: made }),
        onFault: () => setPlan(null),
      },
      { passed: left === "" ? [] : left.split(" ") },
    );
  }, [assessor, fitment, assessment, tools, left]);
  return plan !== null && plan.of === assessment ? plan.plan : null;
}
