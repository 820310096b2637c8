import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fitment } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { Candidate, SearchOptions } from "../../physics/prescription/index.ts";
import type { RankedStop } from "../../physics/ranking/index.ts";

export interface Ranking {
  readonly done: number;
  readonly total: number;
  /** As they come in; in order once finished. */
  readonly ranked: readonly RankedStop[];
  readonly finished: boolean;
  readonly fault: Fault | null;
}

/** Every candidate on the vehicle of the check, worked out beside the screen. */
export function useRanking(
  assessor: Assessor,
  fitment: Fitment | null,
  candidates: readonly Candidate[],
  options: SearchOptions | null,
): Ranking {
  const [ranking, setRanking] = useState<Ranking>(() => begun(candidates.length));
  useEffect(() => {
    setRanking(begun(candidates.length));
    if (!fitment || !options) return;
    const handlers: Parameters<Assessor["rank"]>[2] = {
      onProgress: ({ done, total, ranked }) =>
        setRanking((before) => ({ ...before, done, total, ranked: [...before.ranked, ...ranked] })),
      onRanked: (ranked) =>
        setRanking((before) => ({ ...before, done: before.total, ranked, finished: true })),
      onFault: (fault) => setRanking((before) => ({ ...before, fault, finished: true })),
    };
    return assessor.rank(fitment, candidates, handlers, options);
  }, [assessor, fitment, candidates, options]);
  return ranking;
}

function begun(total: number): Ranking {
  return { done: 0, total, ranked: [], finished: false, fault: null };
}
