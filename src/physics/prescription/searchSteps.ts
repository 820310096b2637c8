import { type Change, changes } from "../choices.ts";
import type { Fitment } from "../fitment.ts";
import type { Outcome } from "../outcome.ts";
import {
  type Candidate,
  type Combination,
  candidatesFor,
  changeOf,
  fittedId,
} from "./candidates.ts";
import { pressedSides, withStop } from "./fitmentWithStop.ts";
import { comparePlaced } from "./judgement.ts";
import { isAsGood, type Wanted } from "./screening.ts";
import {
  type Decided,
  type DecidedFitment,
  type Screened,
  type Trial,
  type TrialOptions,
  Trials,
} from "./trials.ts";

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
function* bestOnVehicle(
  { fitment, trials, combinations }: TriedVehicle,
  options: Pick<SearchOptions, "okOnly">,
): Generator<SearchProgress, Found, void> {
  const best = yield* bestOfSteps(fitment, combinations, trials, options);
  return { best, trials, combinations };
}

/** The same where what decides about the best alone is enough: not put through the whole model. */
export function* bestDecidedOn(
  { fitment, trials, combinations }: TriedVehicle,
  { okOnly = false }: Pick<SearchOptions, "okOnly">,
): Generator<SearchProgress, DecidedFitment | null, void> {
  if (!someLimitEverywhere(fitment)) return null;
  const search = new Search(fitment, combinations, trials);
  const best = yield* search.bestDecided("ok");
  return best !== null || okOnly ? best : yield* search.bestDecided("care");
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

type Holds = (screened: Screened) => boolean;

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

  *best(wanted: Wanted): Steps<Trial | null> {
    return yield* this.#bestBy(wanted, (combination) => this.#trials.whole(combination));
  }

  *bestDecided(wanted: Wanted): Steps<DecidedFitment | null> {
    return yield* this.#bestBy(wanted, (combination) => this.#trials.decided(combination));
  }

  *#bestBy<Each extends Decided>(
    wanted: Wanted,
    judged: (combination: Combination) => Generator<void, Outcome<Each>, void>,
  ): Steps<Each | null> {
    for (const ordered of this.#inOrder(wanted)) {
      for (const combination of yield* ordered) {
        const each = yield* told(judged(combination), () => this.#progress());
        if (each.ok && isAsGood(each.value.judgement.state, wanted)) return each.value;
      }
    }
    return null;
  }

  /** The first that `best` puts through the whole model. */
  *first(wanted: Wanted): Steps<Combination | null> {
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

  *some(): Steps<boolean> {
    for (const change of changes) {
      for (const of of this.#stopsOf(change)) {
        for (const screened of yield* this.#notOut(of, "ok")) {
          if (yield* told(this.#trials.isOk(screened), () => this.#progress())) return true;
        }
      }
    }
    return false;
  }

  /** Those of one kind of change whose clearance and early contact are as wanted. */
  *#standing(change: Change, wanted: Wanted): Steps<Screened[]> {
    const standing: Screened[] = [];
    for (const of of this.#stopsOf(change)) {
      standing.push(...(yield* this.#run(of, wanted)));
      for (const combination of of) this.#decided.add(combination);
    }
    return standing;
  }

  /** What there is of one kind of change, stop by stop. */
  *#stopsOf(change: Change): Generator<readonly Combination[], void, void> {
    const ofFitted = change === "nothing" || change === "spacer";
    for (const [id, own] of this.#ofStop) {
      if ((id === fittedId) !== ofFitted) continue;
      yield own.filter((combination) => combination.change === change);
    }
  }

  /**
   * The run of one stop's combinations, spacers rising, in which neither clearance nor early contact is
   * worse than wanted: of those that are not out its first by halving on clearance, its last by halving on
   * early contact.
   */
  *#run(of: readonly Combination[], wanted: Wanted): Steps<readonly Screened[]> {
    const may = yield* this.#notOut(of, wanted);
    return yield* this.#between(
      may.map(({ combination }) => combination),
      ({ screening }) => screening.isFine("clearance", wanted),
      ({ screening }) => screening.isFine("earlyContact", wanted),
    );
  }

  /** The run that a few draws leave. */
  *#notOut(of: readonly Combination[], wanted: Wanted): Steps<readonly Screened[]> {
    return yield* this.#between(
      of,
      ({ screening }) => !screening.isOut("clearance", wanted),
      ({ screening }) => !screening.isOut("earlyContact", wanted),
    );
  }

  /** Those that are enough and not yet too much, both found by halving. */
  *#between(
    run: readonly Combination[],
    isEnough: Holds,
    isStillFine: Holds,
  ): Steps<readonly Screened[]> {
    // Out of reach: with less spacer at full stop, with more of it where the stop is pressed at rest.
    const late = yield* this.#countTo(run, (each) => {
      const screened = this.#screened(each);
      return screened === null ? presses(this.#fitment, each) : isEnough(screened);
    });
    const enough = run.slice(late);
    const early = yield* this.#countTo(enough, (each) => {
      const screened = this.#screened(each);
      return screened === null || !isStillFine(screened);
    });
    return enough.slice(0, early).flatMap((each) => this.#screened(each) ?? []);
  }

  /** Null where it cannot be assessed. */
  #screened(combination: Combination): Screened | null {
    const screened = this.#trials.screen(combination);
    return screened.ok ? screened.value : null;
  }

  /** How many come before the first that holds, by halving: what holds for one holds for all after it. */
  *#countTo(
    run: readonly Combination[],
    holds: (combination: Combination) => boolean,
  ): Steps<number> {
    let low = 0;
    let high = run.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const found = holds(run[middle] as Combination);
      yield this.#progress();
      if (found) high = middle;
      else low = middle + 1;
    }
    return low;
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
