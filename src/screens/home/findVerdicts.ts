import { type Assessor, createAssessor } from "../../compute/assessor.ts";
import type { State } from "../../physics/fitment.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { CheckStore } from "../../storage/checkStore.ts";

/** More are worked out when their own answer is opened. */
const mostChecks = 30;

function verdictOf(assessor: Assessor, stored: ListedCheck): Promise<State | null> {
  const { photos: _, ...record } = stored.record;
  const completion = completeRecord({ ...stored, record });
  if (!completion.ok) return Promise.resolve(null);
  return new Promise((resolve) => {
    assessor.assess(fitmentOf(completion.value), {
      onStatic: () => undefined,
      onComplete: ({ verdict }) => resolve(verdict),
      onFault: () => resolve(null),
    });
  });
}

/**
 * Works out, one after another and beside the screen, the verdicts of complete checks that have none yet.
 * Returns how to stop.
 */
export function findVerdicts(
  store: CheckStore,
  checks: readonly ListedCheck[],
  onFound: () => void,
  assessor: Assessor = createAssessor(),
): () => void {
  let stopped = false;
  const work = async () => {
    for (const stored of checks.filter(({ lastVerdict }) => !lastVerdict).slice(0, mostChecks)) {
      const verdict = await verdictOf(assessor, stored);
      if (stopped) return;
      if (verdict === null) continue;
      await store.update(stored.id, (current) =>
        current.updatedAt === stored.updatedAt ? { ...current, lastVerdict: verdict } : current,
      );
      if (stopped) return;
      onFound();
    }
    assessor.dispose();
  };
  work();
  return () => {
    stopped = true;
    assessor.dispose();
  };
}
