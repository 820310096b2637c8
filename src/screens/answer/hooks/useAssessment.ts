import { useLayoutEffect, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import { answerAtHand, keepAtHand } from "../../../compute/lastAnswers.ts";
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

function atHand(fitment: Fitment | null): AssessedState | null {
  const answer = fitment && answerAtHand(fitment);
  return fitment && answer ? { state: "complete", fitment, ...answer } : null;
}

/**
 * The answer to a fitment as it comes in, or only once it is whole; a lane holds one request, the
 * newest. One worked out just before, beside a step, is there at once.
 */
export function useAssessment(
  assessor: Assessor,
  fitment: Fitment | null,
  lane: string,
  wholeOnly = false,
): AssessedState {
  const [assessed, setAssessed] = useState<AssessedState>(() => atHand(fitment) ?? waiting);
  // Before the screen is painted, so that the worker begins meanwhile.
  useLayoutEffect(() => {
    const known = atHand(fitment);
    setAssessed((before) =>
      known && before.state === "complete" && before.fitment === fitment
        ? before
        : (known ?? waiting),
    );
    if (!fitment || known) return;
    return assessor.assess(
      fitment,
      {
        onStatic: (assessment) => setAssessed({ state: "static", fitment, assessment }),
        onComplete: (assessment, dynamics) => {
          keepAtHand(fitment, { assessment, dynamics });
          setAssessed({ state: "complete", fitment, assessment, dynamics });
        },
        onFault: (fault) => setAssessed({ state: "fault", fault }),
      },
      { lane, wholeOnly },
    );
  }, [assessor, fitment, lane, wholeOnly]);
  return assessed;
}
