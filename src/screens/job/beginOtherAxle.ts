import type { Outcome } from "../../physics/outcome.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { otherAxle } from "../../records/filling/job.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { goTo, stepHref } from "../addresses.ts";
import { loadReferencePack } from "../referencePack.ts";

/** Starts a check of the other axle in the same job, and goes to it. */
export async function beginOtherAxle(
  store: CheckStore,
  stored: StoredCheck,
): Promise<Outcome<StoredCheck>> {
  const { pack } = await loadReferencePack();
  const { first, other } = otherAxle(stored, pack, inModelUnits);
  const kept = await store.put(other);
  if (!kept.ok) return kept;
  const { job } = first.record;
  if (stored.record.job === undefined) {
    const joined = await store.update(stored.id, (current) => ({
      ...current,
      record: { ...current.record, ...(job && { job }) },
    }));
    if (!joined.ok) return joined;
  }
  goTo(stepHref(other.id));
  return kept;
}
