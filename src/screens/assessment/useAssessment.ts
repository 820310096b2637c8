import { useEffect, useRef, useState } from "preact/hooks";
import type { Assessor, AssessRequestOptions } from "../../compute/assessor.ts";
import { answerAtHand, keepAtHand } from "../../compute/lastAnswers.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { CornerDynamics } from "../../physics/stiffness/index.ts";

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

/** What was asked last, how to take it back, and what came of it. */
interface Asked {
  readonly assessor: Assessor;
  readonly fitment: Fitment | null;
  cancel(): void;
  assessed: AssessedState;
}

/**
 * The answer to a fitment as it comes in, or only once it is whole; a lane holds one request, the
 * newest. One worked out just before, beside a step, is there at once. It is asked for while the screen
 * is still being drawn, so that the worker begins meanwhile.
 */
export function useAssessment(
  assessor: Assessor,
  fitment: Fitment | null,
  lane: string,
  wholeOnly = false,
): AssessedState {
  const [, setTold] = useState(0);
  const asked = useRef<Asked | null>(null);
  useEffect(() => () => asked.current?.cancel(), []);

  if (asked.current?.assessor !== assessor || asked.current.fitment !== fitment) {
    asked.current?.cancel();
    asked.current = ask(assessor, fitment, { lane, wholeOnly }, () =>
      setTold((times) => times + 1),
    );
  }
  return asked.current.assessed;
}

function ask(
  assessor: Assessor,
  fitment: Fitment | null,
  options: AssessRequestOptions,
  tell: () => void,
): Asked {
  const known = fitment && answerAtHand(fitment);
  const asked: Asked = {
    assessor,
    fitment,
    cancel: () => undefined,
    assessed: fitment && known ? { state: "complete", fitment, ...known } : waiting,
  };
  if (!fitment || known) return asked;
  const take = (assessed: AssessedState) => {
    asked.assessed = assessed;
    tell();
  };
  asked.cancel = assessor.assess(
    fitment,
    {
      onStatic: (assessment) => take({ state: "static", fitment, assessment }),
      onComplete: (assessment, dynamics) => {
        keepAtHand(fitment, { assessment, dynamics });
        take({ state: "complete", fitment, assessment, dynamics });
      },
      onFault: (fault) => take({ state: "fault", fault }),
    },
    options,
  );
  return asked;
}
