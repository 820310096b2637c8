import type { CheckId, Fitment, Side, State } from "../physics/fitment.ts";
import { type Prescription, prescribeSteps } from "../physics/prescription/index.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import type { Pack } from "../records/pack/pack.ts";
import { prescribable, searchOptionsOf } from "../records/pack/packCandidates.ts";
import { inModelUnits } from "../saying/modelUnits.ts";

/** What to do, as record.md says it is printed. */
export type PrintedPrescription =
  | {
      readonly stop: string;
      readonly spacerMm: number;
      readonly stopRateClass: number;
      readonly verdict: State;
      readonly message: string;
    }
  | {
      readonly none: true;
      readonly blockedBy: readonly { readonly side: Side; readonly check: CheckId }[];
      readonly message: string;
    };

/** The prescription for a record, in one go. */
export function prescriptionOf(
  record: CheckRecord,
  fitment: Fitment,
  pack: Pack | null,
  samples: number | null,
): Prescription {
  const steps = prescribeSteps(fitment, prescribable(pack, record, fitment), {
    ...searchOptionsOf(pack, record, fitment, "mm"),
    ...(samples === null ? {} : { samples }),
  });
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** The sentences of a prescription as one text, in the model's units. */
export function prescriptionText({ first, message, remarks }: Prescription): string {
  return [first, message, ...remarks]
    .filter(({ length }) => length > 0)
    .map(inModelUnits)
    .join(" ");
}

export function printedPrescription(prescription: Prescription): PrintedPrescription {
  const message = prescriptionText(prescription);
  if (prescription.none) {
    return {
      none: true,
      blockedBy: prescription.blockedBy.map(({ side, check }) => ({ side, check })),
      message,
    };
  }
  return {
    stop: prescription.candidate.stop.name,
    spacerMm: prescription.spacerMm,
    stopRateClass: prescription.stopRateClass,
    verdict: prescription.verdict,
    message,
  };
}
