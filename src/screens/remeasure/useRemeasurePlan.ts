import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import type { RemeasurePlan, ToolsAtHand } from "../../physics/remeasure/index.ts";

/** What to measure again for a complete assessment, worked out beside the screen; null: not known yet. */
export function useRemeasurePlan(
  assessor: Assessor,
  fitment: Fitment | null,
  assessment: Assessment | null,
  tools: ToolsAtHand,
  passed: readonly ReadingId[],
): RemeasurePlan | null {
  const [plan, setPlan] = useState<{ of: Assessment; plan: RemeasurePlan } | null>(null);
  const left = passed.join(" ");
  useEffect(() => {
    if (!fitment || !assessment) return;
    return assessor.planRemeasure(
      fitment,
      assessment,
      tools,
      {
        onPlan: (made) => setPlan({ of: assessment, plan: made }),
        onFault: () => setPlan(null),
      },
      { passed: left.split(" ").filter(isReadingId) },
    );
  }, [assessor, fitment, assessment, tools, left]);
  return plan !== null && plan.of === assessment ? plan.plan : null;
}
