import type { Fitment } from "../fitment.ts";
import { type Candidate, type Combination, candidatesFor } from "../prescription/candidates.ts";
import {
  bestOfSteps,
  combinationsOf,
  firstOfSteps,
  type SearchOptions,
} from "../prescription/searchSteps.ts";
import { type Trial, Trials } from "../prescription/trials.ts";
import { rulesOf } from "../road/useRules.ts";
import { compareRanked, faultyStop, type RankedStop, rankedStop } from "./rankedStop.ts";

export type { RankedStop } from "./rankedStop.ts";

export interface RankProgress {
  /** Candidates put through the whole model as they are. */
  readonly done: number;
  readonly total: number;
  /** Ranked since the last step; the order comes with the end. */
  readonly ranked: readonly RankedStop[];
}

/** Stops drawn at a time: six figures a corner and draw of them take some 23 MB. */
const drawnTogether = 12;

/**
 * The fitted stop and every candidate on the vehicle of the check: as it is, and again with the spacer
 * that serves it best where it does not fit without. The same trials in the same order as the prescription.
 * Yields between events; `return()` stops it. Returns all, best first: those that fit, those that may,
 * those that fail by a little, the others. What cannot be assessed is a row with its fault.
 */
export function* rankStops(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<RankProgress, readonly RankedStop[], void> {
  const candidates = candidatesFor(fitment, others);
  const standing = combinationsOf(fitment, others, options.spacersMm);
  const trials = new Trials(fitment, options, standing);
  const all: RankedStop[] = [];
  const total = candidates.length;
  const ownOf = ({ id }: Candidate) => standing.filter(({ candidate }) => candidate.id === id);
  for (let done = 0; done < total; done += drawnTogether) {
    const next = candidates.slice(done, done + drawnTogether);
    yield* triedSteps(fitment, next, ownOf, trials, { done, total, ranked: [] });
    const waiting: RankProgress = { done: done + next.length, total, ranked: [] };
    for (const candidate of next) {
      const rows = yield* rowsOf(fitment, candidate, ownOf(candidate), trials, options, waiting);
      all.push(...rows);
      yield { ...waiting, ranked: rows };
    }
  }
  return all.sort(compareRanked);
}

/**
 * Puts some candidates through the whole model as they are, and draws them on the spacers that serve them
 * best: all at once, so that the suspension is moved once for all of them.
 */
function* triedSteps(
  fitment: Fitment,
  candidates: readonly Candidate[],
  ownOf: (candidate: Candidate) => readonly Combination[],
  trials: Trials,
  before: RankProgress,
): Generator<RankProgress, void, void> {
  const plain = candidates.map((each) => trials.plain(each));
  yield* waitingFor(trials.drawTogether(plain), before);
  const raised: Combination[] = [];
  for (const [index, candidate] of candidates.entries()) {
    const waiting = { ...before, done: before.done + index };
    const trial = yield* waitingFor(trials.whole(trials.plain(candidate)), waiting);
    if (trial.ok && trial.value.judgement.state === "ok") continue;
    const first = yield* waitingFor(firstOfSteps(fitment, ownOf(candidate), trials), waiting);
    if (first !== null && first.spacerMm > 0) raised.push(first);
  }
  const done = before.done + candidates.length;
  yield* waitingFor(trials.drawTogether(raised), { ...before, done });
}

function* rowsOf(
  fitment: Fitment,
  candidate: Candidate,
  own: readonly Combination[],
  trials: Trials,
  options: SearchOptions,
  waiting: RankProgress,
): Generator<RankProgress, readonly RankedStop[], void> {
  const plain = yield* waitingFor(trials.whole(trials.plain(candidate)), waiting);
  const first = plain.ok ? rowOf(fitment, plain.value) : faultyStop(candidate, plain.fault);
  if (plain.ok && plain.value.judgement.state === "ok") return [first];
  const best = yield* waitingFor(bestOfSteps(fitment, own, trials, options), waiting);
  if (best === null || best.combination.spacerMm === 0) return [first];
  const raised = rowOf(fitment, best);
  return compareRanked(raised, first) < 0 ? [first, raised] : [first];
}

function rowOf(fitment: Fitment, trial: Trial): RankedStop {
  return rankedStop(trial, rulesOf(fitment.use, fitment.rules));
}

function* waitingFor<Result>(
  steps: Generator<unknown, Result, void>,
  waiting: RankProgress,
): Generator<RankProgress, Result, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield waiting;
  }
}
