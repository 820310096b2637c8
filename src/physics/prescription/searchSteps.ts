import type { Fitment, State } from "../fitment.ts";
import {
  type Candidate,
  type Change,
  type Combination,
  candidatesFor,
  changeOf,
  changes,
  fittedId,
} from "./candidates.ts";
import { pressedSides, withStop } from "./fitmentWithStop.ts";
import { comparePlaced } from "./judgement.ts";
import { type StaticTrial, type Trial, type TrialOptions, Trials } from "./trials.ts";

export interface SearchOptions extends TrialOptions {
  /** Spacers that can be bought, mm above 0, rising. */
  readonly spacersMm: readonly number[];
  /** Care is not enough. */
  readonly okOnly?: boolean;
}

export interface SearchProgress {
  readonly done: number;
  readonly total: number;
}

export interface Found {
  /** The best that is ok, else the best that needs care; null where there is neither. */
  readonly best: Trial | null;
  readonly trials: Trials;
  /** Those that may stand: none presses a stop made for impacts at rest. */
  readonly combinations: readonly Combination[];
}

/**
 * Every combination that may stand on this vehicle: each candidate with no spacer and with each spacer
 * that can be bought, without those that press a stop made for impacts at rest.
 */
export function combinationsOf(
  fitment: Fitment,
  others: readonly Candidate[],
  spacersMm: readonly number[],
): readonly Combination[] {
  return candidatesFor(fitment, others).flatMap((candidate) =>
    [0, ...(candidate.spacersMm ?? spacersMm)].flatMap((spacerMm): Combination[] => {
      const combination = { candidate, spacerMm, change: changeOf(candidate, spacerMm) };
      const stands = candidate.stop.duty === "carry" || !presses(fitment, combination);
      return stands ? [combination] : [];
    }),
  );
}

/** Taller than the gap allows on either side. */
function presses(fitment: Fitment, { candidate: { stop }, spacerMm }: Combination): boolean {
  return pressedSides(withStop(fitment, stop, spacerMm)).length > 0;
}

/**
 * The best combination, exactly as putting all of them through the whole model and taking the first by
 * `comparePlaced` would find it, by these bounds:
 * - more spacer under one stop never makes clearance worse nor early contact better, so those of one
 *   stop that may be ok are one run of spacers, found from its two ends;
 * - a stop that fails an event itself cannot be ok in stiffness;
 * - where no limit was measured on a side, its clearance is unsure whatever is fitted;
 * - what cannot come first by travel kept and number of changes is not tried before what can.
 * Yields between events.
 */
export function* searchSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<SearchProgress, Found, void> {
  const combinations = combinationsOf(fitment, others, options.spacersMm);
  const trials = new Trials(fitment, options);
  const best = yield* bestOfSteps(fitment, combinations, trials, options);
  return { best, trials, combinations };
}

/** The same of some combinations only. */
export function* bestOfSteps(
  fitment: Fitment,
  combinations: readonly Combination[],
  trials: Trials,
  { okOnly = false }: Pick<SearchOptions, "okOnly">,
): Generator<SearchProgress, Trial | null, void> {
  if (!someLimitEverywhere(fitment)) return null;
  const search = new Search(fitment, combinations, trials);
  const best = yield* search.best("ok");
  return best !== null || okOnly ? best : yield* search.best("care");
}

function someLimitEverywhere({ corners, fullTravel }: Fitment): boolean {
  return fullTravel !== undefined || corners.every(({ limits }) => limits.length > 0);
}

type Wanted = "ok" | "care";

const allowed: Readonly<Record<Wanted, readonly State[]>> = {
  ok: ["ok"],
  care: ["ok", "care"],
};

class Search {
  readonly #fitment: Fitment;
  readonly #trials: Trials;
  readonly #total: number;
  readonly #ofStop = new Map<string, readonly Combination[]>();
  readonly #decided = new Set<Combination>();

  constructor(fitment: Fitment, combinations: readonly Combination[], trials: Trials) {
    this.#fitment = fitment;
    this.#trials = trials;
    this.#total = combinations.length;
    for (const combination of combinations) {
      const { id } = combination.candidate;
      this.#ofStop.set(id, [...(this.#ofStop.get(id) ?? []), combination]);
    }
  }

  *best(wanted: Wanted): Generator<SearchProgress, Trial | null, void> {
    const later: StaticTrial[] = [];
    for (const change of changes) {
      const standing = yield* this.#standing(change, wanted);
      later.push(...standing.filter(({ judgement }) => !judgement.keepsTravel));
      const kept = standing.filter(({ judgement }) => judgement.keepsTravel);
      const best = yield* this.#bestOf(kept, wanted);
      if (best !== null) return best;
    }
    for (const change of changes) {
      const best = yield* this.#bestOf(
        later.filter(({ combination }) => combination.change === change),
        wanted,
      );
      if (best !== null) return best;
    }
    return null;
  }

  /** Those of one kind of change whose clearance and early contact are as wanted. */
  *#standing(change: Change, wanted: Wanted): Generator<SearchProgress, StaticTrial[], void> {
    const standing: StaticTrial[] = [];
    for (const [id, own] of this.#ofStop) {
      const fitted = id === fittedId;
      if (fitted !== (change === "nothing" || change === "spacer")) continue;
      const of = own.filter((combination) => combination.change === change);
      standing.push(...(yield* this.#run(of, wanted)));
      for (const combination of of) this.#decided.add(combination);
    }
    return standing;
  }

  /**
   * The run of one stop's combinations, spacers rising, in which neither clearance nor early contact is
   * worse than wanted: its first by halving on clearance, then onward while early contact allows.
   */
  *#run(
    of: readonly Combination[],
    wanted: Wanted,
  ): Generator<SearchProgress, StaticTrial[], void> {
    let low = 0;
    let high = of.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const place = this.#placeOf(of[middle] as Combination, wanted);
      yield this.#progress();
      if (place === "none") return [];
      if (place === "short") low = middle + 1;
      else high = middle;
    }
    const run: StaticTrial[] = [];
    for (const combination of of.slice(low)) {
      const trial = this.#trials.before(combination);
      yield this.#progress();
      if (!trial.ok || !fine(trial.value.clearance, wanted)) break;
      if (!fine(trial.value.earlyContact, wanted)) break;
      run.push(trial.value);
    }
    return run;
  }

  /** Of one spacer: too short for clearance, enough or more than enough, or proof that none of this stop stands. */
  #placeOf(combination: Combination, wanted: Wanted): "short" | "enough" | "none" {
    if (wanted === "ok" && combination.spacerMm < this.#surelyShortBelow(combination))
      return "short";
    const trial = this.#trials.before(combination);
    // Out of reach: with less spacer at full stop, with more of it where the stop is pressed at rest.
    if (!trial.ok) return presses(this.#fitment, combination) ? "enough" : "short";
    if (fine(trial.value.clearance, wanted)) return "enough";
    return fine(trial.value.earlyContact, wanted) ? "short" : "none";
  }

  /**
   * The spacer below which at most 2.5 % of the draws leave the wanted reserve, mm: the lower end of the
   * interval of the spacer wanted, from the same stop without one. −∞ where that is not known.
   */
  #surelyShortBelow({ candidate }: Combination): number {
    const plain = this.#ofStop.get(candidate.id)?.find(({ spacerMm }) => spacerMm === 0);
    const trial = plain && this.#trials.before(plain);
    if (!trial?.ok) return Number.NEGATIVE_INFINITY;
    return Math.max(
      ...trial.value.assessment.corners.map(
        ({ intervals }) => intervals.spacerMm?.[0] ?? Number.NEGATIVE_INFINITY,
      ),
    );
  }

  /** The first in order of those that the whole model leaves as wanted. */
  *#bestOf(
    standing: readonly StaticTrial[],
    wanted: Wanted,
  ): Generator<SearchProgress, Trial | null, void> {
    const placed: StaticTrial[] = [];
    for (const trial of standing) {
      const own = yield* told(this.#trials.ownEvents(trial), () => this.#progress());
      if (own !== null) placed.push({ ...trial, judgement: own });
    }
    placed.sort(comparePlaced);
    for (const { combination } of placed) {
      const trial = yield* told(this.#trials.whole(combination), () => this.#progress());
      if (trial.ok && fine(trial.value.judgement.state, wanted)) return trial.value;
    }
    return null;
  }

  #progress(): SearchProgress {
    return { done: this.#decided.size, total: this.#total };
  }
}

function fine(state: State, wanted: Wanted): boolean {
  return allowed[wanted].includes(state);
}

/** The same steps, telling how far the search is. */
function* told<Result>(
  steps: Generator<void, Result, void>,
  progress: () => SearchProgress,
): Generator<SearchProgress, Result, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield progress();
  }
}
