import type { Fitment } from "../../../src/physics/fitment.ts";
import type { Candidate } from "../../../src/physics/prescription/candidates.ts";
import { comparePlaced } from "../../../src/physics/prescription/judgement.ts";
import {
  combinationsOf,
  type Found,
  type SearchOptions,
  searchSteps,
} from "../../../src/physics/prescription/searchSteps.ts";
import { type Decided, type Trial, Trials } from "../../../src/physics/prescription/trials.ts";

/** The value that the steps end in. */
export function finished<Result>(steps: Generator<unknown, Result, void>): Result {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

export function searched(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Found {
  return finished(searchSteps(fitment, others, options));
}

/** Every combination through the whole model, then the first in order: no bound, no pruning. */
export function exhaustive(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Trial | null {
  const trials = new Trials(fitment, options);
  const all = combinationsOf(fitment, others, options.spacersMm).flatMap((combination) => {
    const trial = finished(trials.whole(combination));
    return trial.ok ? [trial.value] : [];
  });
  return firstOf(all);
}

/** The same by what decides about each combination alone, no bound and no pruning either. */
export function exhaustivelyDecided(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Decided | null {
  const combinations = combinationsOf(fitment, others, options.spacersMm);
  const trials = new Trials(fitment, options, combinations);
  const all = combinations.flatMap((combination): Decided[] => {
    const screened = trials.screen(combination);
    if (!screened.ok) return [];
    return [{ combination, judgement: finished(trials.decide(screened.value)) }];
  });
  return firstOf(all);
}

function firstOf<Each extends Decided>(all: readonly Each[]): Each | null {
  for (const wanted of ["ok", "care"] as const) {
    const [best] = all.filter(({ judgement }) => judgement.state === wanted).sort(comparePlaced);
    if (best !== undefined) return best;
  }
  return null;
}
