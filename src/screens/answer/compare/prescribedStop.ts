import type { Fitment } from "../../../physics/fitment.ts";
import { stopWords } from "../../../physics/prescription/index.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { assumedOfSpacer, type ComparedStop, onSpacer } from "./comparedStop.ts";

/** What was prescribed, to be set against what is fitted; null where nothing is changed or found. */
export function prescribedStop(fitment: Fitment, prescribing: Prescribing): ComparedStop | null {
  if (prescribing.state !== "found" || prescribing.prescription.none) return null;
  const { change, candidate, spacerMm, trial } = prescribing.prescription;
  if (change === "nothing") return null;
  return {
    name: onSpacer(
      change === "spacer" ? [messages.thisStop] : stopWords(fitment, { candidate }),
      spacerMm,
    ),
    fitment: trial.fitment,
    assessment: trial.assessment,
    assumed: assumedOfSpacer(spacerMm),
  };
}
