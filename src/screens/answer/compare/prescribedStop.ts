import type { Sentence } from "../../../physics/sentence.ts";
import { mm } from "../../../physics/worked/index.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import type { ComparedStop } from "./useComparison.ts";

/** What was prescribed, to be set against what is fitted; null where nothing is changed or found. */
export function prescribedStop(prescribing: Prescribing): ComparedStop | null {
  if (prescribing.state !== "found" || prescribing.prescription.none) return null;
  const { change, candidate, spacerMm, trial } = prescribing.prescription;
  if (change === "nothing") return null;
  const spacer: Sentence = spacerMm === 0 ? [] : [" on a spacer of ", mm(spacerMm)];
  return {
    name: change === "spacer" ? ["this stop", ...spacer] : [candidate.stop.name, ...spacer],
    fitment: trial.fitment,
    assessment: trial.assessment,
    assumed: spacerMm === 0 ? [] : ["The spacer is rigid."],
  };
}
