import type { Change } from "../choices.ts";
import type { Fitment, Stop } from "../fitment.ts";
import { secantRate, stiffnessClasses, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { sameBuild } from "./fitmentWithStop.ts";

/** A stop that may be fitted instead of the one of the check. */
export interface Candidate {
  readonly id: string;
  readonly stop: Stop;
  /** The spacers that exist for this stop, mm above 0, rising; absent: those that can be bought. */
  readonly spacersMm?: readonly number[];
}

/** The id of the stop that the check itself holds. */
export const fittedId = "fitted";

/** One stop with one spacer under it; the same on every side. */
export interface Combination {
  readonly candidate: Candidate;
  /** Rigid, mm; 0 = none. */
  readonly spacerMm: number;
  readonly change: Change;
}

export function changeOf(candidate: Candidate, spacerMm: number): Change {
  const fitted = candidate.id === fittedId;
  if (spacerMm === 0) return fitted ? "nothing" : "stop";
  return fitted ? "spacer" : "both";
}

/** Spacers that can be bought, mm: 5 to 60 by 5. Common practice. */
export const spacersByMm: readonly number[] = Array.from({ length: 12 }, (_, n) => 5 * (n + 1));

/** Spacers that can be bought, mm: 1/8 in to 2 1/2 in by 1/8 in. Common practice. */
export const spacersByInch: readonly number[] = Array.from(
  { length: 20 },
  (_, n) => (25.4 * (n + 1)) / 8,
);

/** A stop is made no shorter than this, mm. Common practice. */
export const leastStopHeightMm = 15;

/**
 * The fitted stop, then the others, each once: a stop of the same build as the fitted one is the fitted
 * one. Stops shorter than one can be made are left out.
 */
export function candidatesFor(
  fitment: Fitment,
  others: readonly Candidate[],
): readonly Candidate[] {
  return [
    { id: fittedId, stop: fitment.stop },
    ...others.filter(
      ({ stop }) => !sameBuild(stop, fitment.stop) && meanOf(stop.freeHeight) >= leastStopHeightMm,
    ),
  ];
}

/**
 * The fitted build in every other stiffness class: its static curve scaled to the nominal rate, its
 * damping as it is. It is no part that can be ordered. For use without a pack. None where the curve
 * cannot be read.
 */
export function scaledBuilds(stop: Stop): readonly Candidate[] {
  const curve = stopCurve(stop);
  if (!curve.ok) return [];
  const rate = secantRate(curve.value);
  const own = stiffnessClassOf(rate);
  const { partNumber: _part, revision: _revision, batch: _batch, ...build } = stop;
  return stiffnessClasses
    .filter((each) => each !== own)
    .map((each) => ({
      id: `${fittedId} ${each}`,
      stop: {
        ...build,
        curve: build.curve.map(([depth, force]) => [depth, (force * each) / rate] as const),
      },
    }));
}
