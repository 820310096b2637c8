import type { Job } from "../../records/check/checkRecord.ts";
import * as messages from "../../words/compiled/screens/job.ts";

/** "Osprey wagon, job 2214, I. Farrow": as far as it was told. */
export function jobWords({
  label,
  number,
  customer,
}: Pick<Job, "label" | "number" | "customer">): string {
  return (
    [label.trim(), number && messages.job2({ number }), customer].filter(Boolean).join(", ") ||
    messages.job
  );
}
