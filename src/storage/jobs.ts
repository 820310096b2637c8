import { type Outcome, succeed } from "../physics/outcome.ts";
import type { Job } from "../records/check/checkRecord.ts";
import { factsOfJob, withJobFacts } from "../records/filling/job.ts";
import type { CheckStore } from "./checkStore.ts";
import { isSame } from "./sameContent.ts";

/** Every check of a job gets its name, number and customer; how many had others. */
export async function keepJobAlike(store: CheckStore, job: Job): Promise<Outcome<number>> {
  const facts = factsOfJob(job);
  const listed = await store.list();
  if (!listed.ok) return listed;
  const others = listed.value.filter(
    ({ record }) => record.job?.id === job.id && !isSame(factsOfJob(record.job), facts),
  );
  for (const { id } of others) {
    const kept = await store.update(id, (stored) => withJobFacts(stored, facts));
    if (!kept.ok) return kept;
  }
  return succeed(others.length);
}
