import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { Decision } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import type { OddReading } from "../../records/review/oddReadings.ts";
import type { Prescribing } from "../assessment/usePrescription.ts";
import type { DecisionDraft } from "./decisionDraft.ts";
import type { Desk } from "./useDesk.ts";

export interface DecideProps {
  readonly desk: Desk;
  readonly record: CheckRecord;
  readonly submission: Listed;
  readonly fitment: Fitment;
  /** Null until it is whole. */
  readonly assessment: Assessment | null;
  readonly prescribing: Prescribing;
  readonly assessor: Assessor;
  readonly odd: readonly OddReading[];
  readonly draft: DecisionDraft;
  /** Null: nothing is begun any more. */
  onDraft(change: Partial<DecisionDraft> | null): void;
  readonly decisions: readonly Decision[];
  /** To the next check that nobody has decided on. */
  onNextNew(): void;
}
