import type { Assessment } from "../../physics/fitment.ts";
import type { CheckRecord } from "../check/checkRecord.ts";
import type { Decision } from "../review/decision.ts";

/** One check as the maker's questions see it: its newest version, and all that was decided of it. */
export interface FindingSubject {
  readonly key: string;
  readonly record: CheckRecord;
  /** As computed at this desk; null where it is not, or can't be. */
  readonly assessment: Assessment | null;
  /** When its first version came in. */
  readonly firstReceivedAt: string;
  /** Of all its versions. */
  readonly decisions: readonly Decision[];
}
