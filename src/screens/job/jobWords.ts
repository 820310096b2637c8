import type { Job } from "../../records/check/checkRecord.ts";

/** "Osprey wagon, job 2214, I. Farrow": as far as it was told. */
export function jobWords({ label, number, customer }: Job): string {
  return [label.trim(), number && `job ${number}`, customer].filter(Boolean).join(", ") || "Job";
}
