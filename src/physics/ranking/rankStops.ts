import { assessStatic, completeAssessment } from "../assess.ts";
import type { Assessment, Fitment } from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { rulesOf } from "../road/useRules.ts";
import { type CornerDynamics, cornerDynamicsSteps } from "../stiffness/cornerDynamics.ts";
import { fitmentWithStop } from "./fitmentWithStop.ts";
import {
  type Candidate,
  compareRanked,
  faultyStop,
  type RankedStop,
  rankedStop,
} from "./rankedStop.ts";

export type { Candidate, Margins, RankedStop, Shortcoming } from "./rankedStop.ts";

export interface RankProgress {
  /** Candidates done, with the spacers tried under them. */
  readonly done: number;
  readonly total: number;
  /** Ranked since the last step; the order comes with the end. */
  readonly ranked: readonly RankedStop[];
}

export interface RankOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** Spacers come in steps of this, mm; 1 where absent. */
  readonly spacerStepMm?: number;
  /** The tallest spacer that is tried, mm; 50 where absent (common practice). */
  readonly mostSpacerMm?: number;
}

/**
 * Every candidate on the vehicle of the check, assessed as the answer is, and again with a spacer where
 * it does not fit without one and a spacer makes it better. Yields between events; `return()` stops it.
 * Returns all, best first: those that fit by their least margin, those that may, those that fail by a
 * little, the others.
 * What cannot be assessed is a row with its fault.
 */
export function* rankStops(
  fitment: Fitment,
  candidates: readonly Candidate[],
  options: RankOptions = {},
): Generator<RankProgress, readonly RankedStop[], void> {
  const all: RankedStop[] = [];
  const total = candidates.length;
  for (const [done, candidate] of candidates.entries()) {
    const waiting: RankProgress = { done, total, ranked: [] };
    const plain = yield* ranked(fitment, candidate, 0, options, waiting);
    const rows = [plain];
    for (const height of spacersToTry(plain, options)) {
      const raised = yield* ranked(fitment, candidate, height, options, waiting);
      if (raised.fault === null && compareRanked(raised, plain) < 0) {
        rows.push(raised);
        break;
      }
    }
    all.push(...rows);
    yield { done: done + 1, total, ranked: rows };
  }
  return all.sort(compareRanked);
}

function* ranked(
  fitment: Fitment,
  candidate: Candidate,
  spacerMm: number,
  options: RankOptions,
  waiting: RankProgress,
): Generator<RankProgress, RankedStop, void> {
  const changed = fitmentWithStop(fitment, candidate.stop, spacerMm);
  if (!changed.ok) return faultyStop(candidate, changed.fault);
  const assessed = yield* assessment(changed.value, options, waiting);
  if (!assessed.ok) return faultyStop(candidate, assessed.fault);
  const rules = rulesOf(fitment.use, fitment.rules);
  return rankedStop(candidate, spacerMm, changed.value, assessed.value, rules);
}

/** `assessFitment`, in steps. */
function* assessment(
  fitment: Fitment,
  { samples, seed }: RankOptions,
  waiting: RankProgress,
): Generator<RankProgress, Outcome<Assessment>, void> {
  const assessed = assessStatic(fitment, {
    ...(samples === undefined ? {} : { samples }),
    ...(seed === undefined ? {} : { seed }),
  });
  yield waiting;
  if (!assessed.ok) return assessed;
  const dynamics: CornerDynamics[] = [];
  for (const corner of fitment.corners) {
    const steps = cornerDynamicsSteps(fitment, corner);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        dynamics.push(step.value);
        break;
      }
      yield waiting;
    }
  }
  return succeed(completeAssessment(fitment, assessed.value, dynamics));
}

/**
 * Heights worth trying under a stop that does not fit, most promising first, mm: what makes its reserve
 * sure, what gives it on the mean, and where its stiffness fails half and all of what early contact
 * leaves. One height for every side.
 */
function spacersToTry(plain: RankedStop, options: RankOptions): readonly number[] {
  if (plain.group === "fits" || plain.assessment === null) return [];
  const { corners } = plain.assessment;
  const { spacerStepMm: step = 1, mostSpacerMm = 50 } = options;
  const most = Math.min(
    mostSpacerMm,
    ...corners.map(({ mostExtraHeightMm }) => mostExtraHeightMm ?? mostSpacerMm),
  );
  const fails = (id: string) => plain.shortcomings.some(({ check }) => check === id);
  const heights: number[] = [];
  if (fails("clearance")) {
    heights.push(
      Math.max(...corners.map(({ intervals }) => intervals.spacerMm?.[1] ?? 0)),
      Math.max(...corners.map(({ spacerMm }) => spacerMm ?? 0)),
    );
  }
  if (fails("stiffness")) heights.push(most / 2, most);
  const inSteps = heights
    .filter((height) => height <= most + step)
    .map((height) =>
      height > most - step ? step * Math.floor(most / step) : step * Math.ceil(height / step),
    );
  return [...new Set(inSteps)].filter((height) => height > 0);
}
