import { checkName, dateText } from "../../records/check/checkName.ts";
import type { Job } from "../../records/check/checkRecord.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { said } from "../../saying/texts.ts";

interface JobGroup {
  /** Null: a check that is in no job, alone. */
  readonly job: Job | null;
  readonly checks: readonly ListedCheck[];
}

const moments = ["before", undefined, "after"];

function placeOf({ record: { axle, job } }: ListedCheck): number {
  return (axle === "rear" ? 3 : 0) + moments.indexOf(job?.moment);
}

/** The checks by their jobs, in the order in which the first of each comes: front before rear. */
export function jobGroups(checks: readonly ListedCheck[]): readonly JobGroup[] {
  const groups = new Map<string, { job: Job | null; checks: ListedCheck[] }>();
  for (const check of checks) {
    const job = check.record.job ?? null;
    const key = job ? `job ${job.id}` : check.id;
    const group = groups.get(key);
    if (group) group.checks.push(check);
    else groups.set(key, { job, checks: [check] });
  }
  for (const group of groups.values()) {
    group.checks.sort((a, b) => placeOf(a) - placeOf(b) || (a.createdAt < b.createdAt ? -1 : 1));
  }
  return [...groups.values()];
}

/** Those in which every word is found: name, vehicle, job, customer, axle, stop, date. */
export function foundIn(checks: readonly ListedCheck[], words: string): readonly ListedCheck[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return checks;
  return checks.filter((check) => {
    const { vehicle, job, axle, stop } = check.record;
    const text = [
      said(checkName(check)),
      vehicle?.label,
      job?.label,
      job?.number,
      job?.customer,
      job?.moment,
      axle,
      stop?.name,
      stop?.partNumber,
      dateText(check.createdAt),
    ]
      .join("\n")
      .toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}
