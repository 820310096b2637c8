import type { Corner, Fitment, Stop } from "../fitment.ts";
import { rulesOf } from "../road/useRules.ts";
import { type OwnHits, type OwnHitsOptions, ownHitsSteps } from "../stiffness/cornerDynamics.ts";
import { allowedLaws } from "../stop/allowedLaws.ts";
import { missingRideData } from "../verdict/missingRideData.ts";
import type { Combination } from "./candidates.ts";
import type { JudgedCheck } from "./judgement.ts";
import { keyOf } from "./sharedKeys.ts";

/**
 * Do a stop's own hits and those of its class decide about its stiffness? Else its neighbors do as well,
 * for a curve that is an estimate, or the other laws that its test allows.
 */
export function isJudgedByHits(stop: Stop): boolean {
  return stop.estimated === undefined && allowedLaws(stop).length === 0;
}

/** The hits of the combinations on one vehicle, each worked out once a side. */
export class StopHits {
  readonly #known = new Map<string, { readonly hits: OwnHits; readonly isWhole: boolean }>();

  /** Of every side; to the first failure, up to the side that fails. Yields between events. */
  *of(
    { combination, fitment }: { readonly combination: Combination; readonly fitment: Fitment },
    options: OwnHitsOptions = {},
  ): Generator<void, readonly OwnHits[], void> {
    const all: OwnHits[] = [];
    for (const corner of fitment.corners) {
      const key = `${corner.side} ${keyOf(combination)}`;
      const known = this.#known.get(key);
      const isEnough = known?.isWhole || (known && options.toFirstFailure);
      const hits = isEnough ? known.hits : yield* ownHitsSteps(fitment, corner, options);
      const isWhole = !options.toFirstFailure || hits.passes !== false;
      if (!isEnough) this.#known.set(key, { hits, isWhole });
      all.push(hits);
      if (options.toFirstFailure && hits.passes === false) break;
    }
    return all;
  }
}

/** The stiffness check by a stop's own hits, side by side. */
export function stiffnessChecks(
  fitment: Fitment,
  hits: readonly OwnHits[],
): readonly JudgedCheck[] {
  const hasEvents = rulesOf(fitment.use, fitment.rules).events.length > 0;
  return hits.map(({ passes }, index) => {
    const corner = fitment.corners[index] as Corner;
    return {
      side: corner.side,
      check: "stiffness",
      state: passes === null ? "unsure" : passes ? "ok" : "no",
      unknown: passes === null && (missingRideData(corner, fitment.ride).length > 0 || !hasEvents),
    };
  });
}
