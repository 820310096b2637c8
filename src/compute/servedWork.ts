import type { Fitment } from "../physics/fitment.ts";
import { fittedId } from "../physics/prescription/index.ts";
import { rankStops } from "../physics/ranking/index.ts";
import { heightClassMap } from "../physics/stiffness/index.ts";
import { meanOf } from "../physics/uncertainty/index.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { fitmentOf } from "../records/check/fitmentOf.ts";
import type { Build, Combination, Served } from "../records/findings/coverage.ts";
import type { Pack } from "../records/pack/pack.ts";
import {
  fittedInPack,
  searchOptionsOf,
  stopsByMounting,
  triedCandidates,
} from "../records/pack/packCandidates.ts";
import { judgedAtDesk } from "../records/review/deskDemands.ts";
import { unitOf } from "../records/review/submission.ts";

/** Heights of builds that might be made, mm: one in a step of 10. */
const heightsTried = Array.from({ length: 15 }, (_, place) => 40 + 10 * place);

/**
 * What serves one checked vehicle: each stop of the pack that can be ordered and mounts there, with the spacer that suits it best,
 * where every check that a stop can change is ok or care. Where nothing does: the heights and classes at which
 * no limit is missed on any side, the fitted stop's own curve scaled.
 */
export function servedOf(key: string, record: CheckRecord, pack: Pack): Served {
  const fitment = fitmentOf(judgedAtDesk(record, pack));
  const fitted = fittedInPack(pack, record)?.id ?? null;
  const candidates = triedCandidates(stopsByMounting(pack, record));
  const steps = rankStops(
    fitment,
    candidates,
    searchOptionsOf(pack, record, fitment, unitOf(record)),
  );
  let step = steps.next();
  while (!step.done) step = steps.next();
  const combinations = step.value.flatMap(({ id, spacerMm, group, verdict }): Combination[] => {
    const stop = id === fittedId ? fitted : id;
    const serves = (group === "fits" || group === "mayFit") && verdict !== "unsure";
    return stop !== null && serves ? [{ stop, spacerMm }] : [];
  });
  return { key, combinations, builds: combinations.length > 0 ? [] : buildsFor(fitment) };
}

function buildsFor(fitment: Fitment): Build[] {
  const ownHeight = meanOf(fitment.stop.freeHeight) + (fitment.spacerMm ?? 0);
  const works: Set<string>[] = [];
  const named = new Map<string, Build>();
  for (const corner of fitment.corners) {
    const map = heightClassMap(
      fitment,
      corner,
      heightsTried.map((height) => height - ownHeight),
    );
    if (!map.ok) return [];
    const own = new Set<string>();
    for (const cell of map.value.cells()) {
      if (cell === null || cell.failures.length > 0) continue;
      const heightMm = Math.round(ownHeight + cell.extraHeightMm);
      if (!heightsTried.includes(heightMm)) continue;
      const name = `${heightMm} ${cell.stiffnessClass}`;
      named.set(name, { heightMm, stiffnessClass: cell.stiffnessClass });
      own.add(name);
    }
    works.push(own);
  }
  return [...named]
    .filter(([name]) => works.every((own) => own.has(name)))
    .map(([, build]) => build);
}
