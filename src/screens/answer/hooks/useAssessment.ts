import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { Fault } from "../../../physics/outcome.ts";
import type { CornerDynamics } from "../../../physics/stiffness/cornerDynamics.ts";

export type AssessedState =
  | { readonly state: "waiting" }
  /** Without impacts and stiffness, which are still being worked out. */
  | { readonly state: "static"; readonly fitment: Fitment; readonly assessment: Assessment }
  | {
      readonly state: "complete";
      readonly fitment: Fitment;
      readonly assessment: Assessment;
      readonly dynamics: readonly CornerDynamics[];
    }
  | { readonly state: "fault"; readonly fault: Fault };

const waiting: AssessedState = { state: "waiting" };

/** The answer to a fitment as it comes in; a lane holds one request, the newest. */
export function useAssessment(
  assessor: Assessor,
  fitment: Fitment | null,
  lane: string,
): AssessedState {
  const [assessed, setAssessed] = useState<AssessedState>(waiting);
  useEffect(() => {
    setAssessed(waiting);
    if (!fitment) return;
    return assessor.assess(
      fitment,
      {
        onStatic: (assessment) => setAssessed({ state: "static", fitment, assessment }),
        onComplete: (assessment, dynamics) =>
          setAssessed({ state: "complete", fitment, assessment, dynamics }),
        onFault: (fault) => setAssessed({ state: "fault", fault }),
      },
      { lane },
    );
  }, [assessor, fitment, lane]);
  return assessed;
}
