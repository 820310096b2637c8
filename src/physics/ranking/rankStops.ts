import { type AssessOptions, assessStatic, completeAssessment } from "../assess.ts";
import type { Assessment, Fitment } from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import type { Candidate } from "../prescription/candidates.ts";
import { fitmentWithStop } from "../prescription/fitmentWithStop.ts";
import { rulesOf } from "../road/useRules.ts";
import { type CornerDynamics, cornerDynamicsSteps } from "../stiffness/cornerDynamics.ts";
import { compareRanked, faultyStop, type RankedStop, rankedStop } from "./rankedStop.ts";
import { type SpacerOptions, spacersToTry } from "./spacersToTry.ts";

export type { Margins, RankedStop, Shortcoming } from "./rankedStop.ts";

export interface RankProgress {
  /** Candidates done, with the spacers tried under them. */
  readonly done: number;
  readonly total: number;
  /** Ranked since the last step; the order comes with the end. */
  readonly ranked: readonly RankedStop[];
}

export type RankOptions = AssessOptions & SpacerOptions;

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
  options: RankOptions,
  waiting: RankProgress,
): Generator<RankProgress, Outcome<Assessment>, void> {
  const assessed = assessStatic(fitment, options);
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
