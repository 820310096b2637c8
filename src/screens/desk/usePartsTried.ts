import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fitment } from "../../physics/fitment.ts";
import { type Candidate, fittedId } from "../../physics/prescription/index.ts";
import type { RankedStop } from "../../physics/ranking/index.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { isOffered, type PackStop } from "../../records/pack/pack.ts";
import { mountsHere, packCandidate, searchOptionsOf } from "../../records/pack/packCandidates.ts";
import { rankedKey } from "../ranking/rankingWords.ts";
import { useRanking } from "../ranking/useRanking.ts";
import { useReferencePack } from "../referencePack.ts";

/** A stop of the pack, with a spacer or without, tried on this check's readings. */
export interface TriedPart {
  readonly key: string;
  readonly ranked: RankedStop;
  readonly stop: PackStop;
  /** It is not known whether it mounts there. */
  readonly unclear: boolean;
}

export interface PartsTried {
  readonly parts: readonly TriedPart[];
  readonly done: number;
  readonly total: number;
  readonly finished: boolean;
}

const none: readonly Candidate[] = [];

/** Every other stop of the pack that may mount on this vehicle, in the order of the ranking. */
export function usePartsTried(
  assessor: Assessor,
  record: CheckRecord,
  fitment: Fitment,
  wanted: boolean,
  unit: LengthUnit,
): PartsTried {
  const pack = useReferencePack();
  const mounts = useMemo(() => mountsHere(pack, record), [pack, record]);
  const candidates = useMemo(
    () =>
      wanted
        ? pack.stops.filter((stop) => isOffered(stop) && mounts(stop) !== "no").map(packCandidate)
        : none,
    [pack, mounts, wanted],
  );
  const options = useMemo(
    () => searchOptionsOf(pack, record, fitment, unit),
    [pack, record, fitment, unit],
  );
  const { ranked, done, total, finished } = useRanking(
    assessor,
    wanted ? fitment : null,
    candidates,
    options,
  );
  return useMemo(() => {
    const parts = ranked
      .filter(({ id }) => id !== fittedId)
      .flatMap((row): TriedPart[] => {
        const stop = pack.stops.find(({ id }) => id === row.id);
        if (stop === undefined) return [];
        const unclear = mounts(stop) !== "yes";
        return [{ key: rankedKey(row), ranked: row, stop, unclear }];
      });
    return {
      parts: [
        ...parts.filter(({ unclear }) => !unclear),
        ...parts.filter(({ unclear }) => unclear),
      ],
      done,
      total,
      finished,
    };
  }, [ranked, done, total, finished, pack, mounts]);
}
