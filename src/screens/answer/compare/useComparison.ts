import { useMemo } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { Fault, Outcome } from "../../../physics/outcome.ts";
import type { Sentence } from "../../../physics/sentence.ts";
import { useAssessment } from "../../assessment/useAssessment.ts";

/** Another stop, or this one at another height, on the same vehicle. */
export interface OtherStop {
  readonly name: Sentence;
  readonly fitment: Outcome<Fitment>;
  /** What has to be true for its figures, beyond what holds for this stop's. */
  readonly assumed: readonly string[];
}

export interface ComparedStop {
  readonly name: Sentence;
  readonly fitment: Fitment;
  readonly assessment: Assessment;
  readonly assumed: readonly string[];
}

export interface Comparison {
  /** Null while it is worked out, where it cannot be, and where there is none. */
  readonly other: ComparedStop | null;
  readonly fault: Fault | null;
}

export function useComparison(
  assessor: Assessor,
  candidate: OtherStop | null,
  lane: string,
): Comparison {
  const fitment = candidate?.fitment.ok ? candidate.fitment.value : null;
  const assessed = useAssessment(assessor, fitment, lane);
  return useMemo(() => {
    if (!candidate) return { other: null, fault: null };
    if (!candidate.fitment.ok) return { other: null, fault: candidate.fitment.fault };
    if (assessed.state === "fault") return { other: null, fault: assessed.fault };
    if (assessed.state !== "complete" || assessed.fitment !== fitment) {
      return { other: null, fault: null };
    }
    const { name, assumed } = candidate;
    return {
      other: { name, assumed, fitment: assessed.fitment, assessment: assessed.assessment },
      fault: null,
    };
  }, [candidate, assessed, fitment]);
}
