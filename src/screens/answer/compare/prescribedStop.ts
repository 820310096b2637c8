import type { Prescribing } from "../../assessment/usePrescription.ts";
import { assumedOfSpacer, type ComparedStop, onSpacer } from "./comparedStop.ts";

/** What was prescribed, to be set against what is fitted; null where nothing is changed or found. */
export function prescribedStop(prescribing: Prescribing): ComparedStop | null {
  if (prescribing.state !== "found" || prescribing.prescription.none) return null;
  const { change, candidate, spacerMm, trial } = prescribing.prescription;
  if (change === "nothing") return null;
  return {
    name: onSpacer(change === "spacer" ? "this stop" : candidate.stop.name, spacerMm),
    fitment: trial.fitment,
    assessment: trial.assessment,
    assumed: assumedOfSpacer(spacerMm),
  };
}
