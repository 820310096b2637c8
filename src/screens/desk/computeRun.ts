import type { Pool } from "../../compute/pool.ts";
import type { PoolResult } from "../../compute/poolMessages.ts";
import type { Assessment } from "../../physics/fitment.ts";
import { worded } from "../../saying/texts.ts";
import type { DeskStore, Result } from "../../storage/deskStore.ts";

const atOnce = 40;
const keepEveryMs = 700;

/** As it is kept: another version may have other messages. */
function assessmentInWords(assessment: Assessment): Assessment {
  return {
    ...assessment,
    reason: worded(assessment.reason),
    corners: assessment.corners.map((corner) => ({
      ...corner,
      checks: corner.checks.map((check) => ({ ...check, sentence: worded(check.sentence) })),
    })),
  };
}

function resultOf(key: string, result: PoolResult): Result | null {
  if (result.kind === "computed") {
    const { computed, assessment } = result;
    return {
      key,
      computed: { ...computed, reason: worded(computed.reason) },
      assessment: assessment && assessmentInWords(assessment),
    };
  }
  if (result.kind === "failed" && result.fault.code !== "cancelled") {
    return {
      key,
      computed: { verdict: "unsure", reason: worded(result.fault.sentence), odd: 0 },
      assessment: null,
    };
  }
  return null;
}

/**
 * Computes the answer of every kept submission that has none yet. What is done is kept as it goes; what
 * is not, is done next time. Only one tab computes; the others see what it finds.
 */
export async function runComputing(surroundings: {
  readonly store: DeskStore;
  readonly pool: Pool;
  readonly signal: AbortSignal;
  onResults(results: readonly Result[]): void;
}): Promise<void> {
  const work = () => computeAll(surroundings);
  const { locks } = globalThis.navigator ?? {};
  if (!locks) return work();
  try {
    await locks.request("stopfit-desk-computing", { signal: surroundings.signal }, work);
  } catch {
    // Stopped while another tab was computing.
  }
}

async function computeAll({
  store,
  pool,
  signal,
  onResults,
}: Parameters<typeof runComputing>[0]): Promise<void> {
  while (!signal.aborted) {
    const keys = await store.uncomputed(atOnce);
    if (!keys.ok || keys.value.length === 0) return;
    let results: Result[] = [];
    let keptAt = Date.now();
    const keep = async (): Promise<boolean> => {
      const done = results;
      results = [];
      keptAt = Date.now();
      if (done.length === 0) return true;
      const kept = await store.keepResults(done);
      if (kept.ok) onResults(done);
      return kept.ok;
    };
    const waiting = [...keys.value];
    let stuck = false;
    const lane = async (): Promise<void> => {
      for (;;) {
        const key = waiting.shift();
        if (key === undefined || signal.aborted || stuck) return;
        const text = await store.text(key);
        if (!text.ok) {
          stuck = true;
          return;
        }
        const done = await pool.run({ kind: "compute", text: text.value ?? "" });
        const result = resultOf(key, done);
        if (result !== null) results.push(result);
        if (Date.now() - keptAt > keepEveryMs && !(await keep())) stuck = true;
      }
    };
    await Promise.all(Array.from({ length: pool.size }, lane));
    if (!(await keep()) || stuck) return;
  }
}
