import type { Fitment } from "../fitment.ts";
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
import { isAsGood, type Wanted } from "./screening.ts";
import { type Decided, type Screened, type Trial, type TrialOptions, Trials } from "./trials.ts";

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
 * - what decides about clearance and early contact is drawn once for all of them (`ClosingDraws`);
 * - a stop that fails an event itself, or whose class does, cannot be ok in stiffness;
 * - where no limit was measured on a side, its clearance is unsure whatever is fitted;
 * - what cannot come first by travel kept and number of changes is not tried before what can.
 * Yields between events.
 */
export function* searchSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<SearchProgress, Found, void> {
  return yield* bestOnVehicle(vehicleFor(fitment, others, options), options);
}

/** A vehicle and all that may be tried on it; what was worked out is kept from one question to the next. */
export interface TriedVehicle extends Omit<Found, "best"> {
  readonly fitment: Fitment;
}

export function vehicleFor(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): TriedVehicle {
  const combinations = combinationsOf(fitment, others, options.spacersMm);
  return { fitment, combinations, trials: new Trials(fitment, options, combinations) };
}

/** The search on a vehicle of which something may be known already. */
export function* bestOnVehicle(
  { fitment, trials, combinations }: TriedVehicle,
  options: Pick<SearchOptions, "okOnly">,
): Generator<SearchProgress, Found, void> {
  const best = yield* bestOfSteps(fitment, combinations, trials, options);
  return { best, trials, combinations };
}

/** Is there a combination that is ok? The first that is found answers. */
export function* someFits({
  fitment,
  trials,
  combinations,
}: TriedVehicle): Generator<SearchProgress, boolean, void> {
  if (!someLimitEverywhere(fitment)) return false;
  return yield* new Search(fitment, combinations, trials).some();
}

/** The best of some combinations only. */
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

/**
 * The combination that `bestOfSteps` of these would put through the whole model first; null where it would
 * none. What is worked out for it is kept in the trials.
 */
export function* firstOfSteps(
  fitment: Fitment,
  combinations: readonly Combination[],
  trials: Trials,
): Generator<SearchProgress, Combination | null, void> {
  if (!someLimitEverywhere(fitment)) return null;
  const search = new Search(fitment, combinations, trials);
  return (yield* search.first("ok")) ?? (yield* search.first("care"));
}

function someLimitEverywhere({ corners, fullTravel }: Fitment): boolean {
  return fullTravel !== undefined || corners.every(({ limits }) => limits.length > 0);
}

type Steps<Result> = Generator<SearchProgress, Result, void>;

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
    for (const ordered of this.#inOrder(wanted)) {
      for (const combination of yield* ordered) {
        const trial = yield* told(this.#trials.whole(combination), () => this.#progress());
        if (trial.ok && isAsGood(trial.value.judgement.state, wanted)) return trial.value;
      }
    }
    return null;
  }

  /** The first that `best` puts through the whole model. */
  *first(wanted: Wanted): Generator<SearchProgress, Combination | null, void> {
    for (const ordered of this.#inOrder(wanted)) {
      const [first] = yield* ordered;
      if (first !== undefined) return first;
    }
    return null;
  }

  /** Those that may be as wanted, in order: what keeps the travel first, and of that the fewest changes. */
  *#inOrder(wanted: Wanted): Generator<Steps<readonly Combination[]>, void, void> {
    const later: Screened[] = [];
    for (const change of changes) yield this.#keptOf(change, wanted, later);
    for (const change of changes) {
      yield this.#ordered(later.filter(({ combination }) => combination.change === change));
    }
  }

  /** Those of one kind of change that keep the travel, in order; the others are added to `later`. */
  *#keptOf(change: Change, wanted: Wanted, later: Screened[]): Steps<readonly Combination[]> {
    const standing = yield* this.#standing(change, wanted);
    later.push(...standing.filter(({ place }) => !place.keepsTravel));
    return yield* this.#ordered(standing.filter(({ place }) => place.keepsTravel));
  }

  *some(): Generator<SearchProgress, boolean, void> {
    for (const change of changes) {
      for (const screened of yield* this.#standing(change, "ok")) {
        const judgement = yield* told(this.#trials.placed(screened), () => this.#progress());
        if (judgement?.state === "ok") return true;
        if (judgement === null || screened.fitment.stop.estimated === undefined) continue;
        const decided = yield* told(this.#trials.decide(screened), () => this.#progress());
        if (decided.state === "ok") return true;
      }
    }
    return false;
  }

  /** Those of one kind of change whose clearance and early contact are as wanted. */
  *#standing(change: Change, wanted: Wanted): Generator<SearchProgress, Screened[], void> {
    const standing: Screened[] = [];
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
  *#run(of: readonly Combination[], wanted: Wanted): Generator<SearchProgress, Screened[], void> {
    let low = 0;
    let high = of.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const isEnough = this.#isEnough(of[middle] as Combination, wanted);
      yield this.#progress();
      if (isEnough) high = middle;
      else low = middle + 1;
    }
    const run: Screened[] = [];
    for (const combination of of.slice(low)) {
      const screened = this.#trials.screen(combination);
      yield this.#progress();
      if (!screened.ok || !screened.value.screening.isFine("clearance", wanted)) break;
      if (!screened.value.screening.isFine("earlyContact", wanted)) break;
      run.push(screened.value);
    }
    return run;
  }

  /** Is this spacer enough for clearance, or more than enough? */
  #isEnough(combination: Combination, wanted: Wanted): boolean {
    const screened = this.#trials.screen(combination);
    // Out of reach: with less spacer at full stop, with more of it where the stop is pressed at rest.
    return screened.ok
      ? screened.value.screening.isFine("clearance", wanted)
      : presses(this.#fitment, combination);
  }

  /** Those whose stiffness is fine as well, in order. */
  *#ordered(standing: readonly Screened[]): Steps<readonly Combination[]> {
    const placed: Decided[] = [];
    for (const screened of standing) {
      const judgement = yield* told(this.#trials.placed(screened), () => this.#progress());
      if (judgement !== null) placed.push({ combination: screened.combination, judgement });
    }
    return placed.sort(comparePlaced).map(({ combination }) => combination);
  }

  #progress(): SearchProgress {
    return { done: this.#decided.size, total: this.#total };
  }
}

/** The same steps, telling how far the search is. */
export function* told<Result>(
  steps: Generator<void, Result, void>,
  progress: () => SearchProgress,
): Generator<SearchProgress, Result, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield progress();
  }
}
