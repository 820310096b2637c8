import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fitment, State } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import { type Candidate, fittedId, type SearchOptions } from "../../physics/prescription/index.ts";
import type { RankedStop } from "../../physics/ranking/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type Pack, type PackStop, stopOf } from "../../records/pack/pack.ts";
import {
  fittedInPack,
  type MountedCheck,
  searchOptionsOf,
  stopsByMounting,
  triedCandidates,
} from "../../records/pack/packCandidates.ts";
import { rankedKey } from "./triedWords.ts";

/** One stop, with a spacer or without, put through the whole model on the readings of a check. */
export interface TriedStop {
  readonly key: string;
  readonly ranked: RankedStop;
  /** As the pack has it; null where it is only in the check. */
  readonly stop: PackStop | null;
  /** The very stop of the check, as it stands there. */
  readonly asFitted: boolean;
  /** It is not known whether it mounts there. */
  readonly unclear: boolean;
  /** The verdict, which is never green before the stop is known to mount. */
  readonly shown: State;
}

export interface TriedStops {
  /** Those that mount, as they come in, in order once finished. */
  readonly mounting: readonly TriedStop[];
  /** Those that may, likewise. */
  readonly unclear: readonly TriedStop[];
  /** What can't be mounted there, and so was not tried. */
  readonly elsewhere: readonly PackStop[];
  /** The check's own stop as the pack has it; null where it is not in the pack. */
  readonly fitted: PackStop | null;
  readonly done: number;
  readonly total: number;
  readonly finished: boolean;
  readonly fault: Fault | null;
}

/** All that were tried. */
export function allTried({ mounting, unclear }: TriedStops): readonly TriedStop[] {
  return [...mounting, ...unclear];
}

/** Tested to fit, with care at most, and known to mount there: what fails this needs a written reason. */
export function isAdvisable({ unclear, ranked: { verdict } }: TriedStop): boolean {
  return !unclear && (verdict === "ok" || verdict === "care");
}

/**
 * The one list of stops for a vehicle: the fitted stop and every stop of the pack that can be ordered and
 * may mount there, tried on the readings of the check, beside the screen. Null fitment: not wanted yet.
 */
export function useTriedStops(
  assessor: Assessor,
  check: MountedCheck,
  fitment: Fitment | null,
  pack: Pack,
  unit: LengthUnit,
): TriedStops {
  const stops = useMemo(() => stopsByMounting(pack, check), [pack, check]);
  const candidates = useMemo(() => triedCandidates(stops), [stops]);
  const options = useMemo(
    () => fitment && searchOptionsOf(pack, check, fitment, unit),
    [pack, check, fitment, unit],
  );
  const { ranked, ...progress } = useRanking(assessor, fitment, candidates, options);
  return useMemo(() => {
    const fitted = fittedInPack(pack, check);
    const tried = ranked.map((row): TriedStop => {
      const unclear = stops.unclear.some(({ id }) => id === row.id);
      return {
        key: rankedKey(row),
        ranked: row,
        stop: row.id === fittedId ? fitted : stopOf(pack, row.id),
        asFitted: row.id === fittedId && row.spacerMm === 0,
        unclear,
        shown: unclear && row.verdict !== "no" ? "unsure" : row.verdict,
      };
    });
    return {
      mounting: tried.filter(({ unclear }) => !unclear),
      unclear: tried.filter(({ unclear }) => unclear),
      elsewhere: stops.elsewhere,
      fitted,
      ...progress,
    };
  }, [
    pack,
    check,
    stops,
    ranked,
    progress.done,
    progress.total,
    progress.finished,
    progress.fault,
  ]);
}

interface Ranking {
  readonly done: number;
  readonly total: number;
  /** As they come in; in order once finished. */
  readonly ranked: readonly RankedStop[];
  readonly finished: boolean;
  readonly fault: Fault | null;
}

function useRanking(
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
