import { assessStatic } from "../assess.ts";
import { type Change, changes } from "../choices.ts";
import type { CheckId, Fitment, Side, State } from "../fitment.ts";
import { succeed } from "../outcome.ts";
import type { Sentence } from "../sentence.ts";
import { ClosingDraws } from "../uncertainty/closingDraws.ts";
import { SharedDraws } from "../uncertainty/sharedDraws.ts";
import { DrawnColumns } from "../uncertainty/stopDraws.ts";
import { type Candidate, fittedId } from "./candidates.ts";
import { pressedSides } from "./fitmentWithStop.ts";
import { type Blocked, comparePlaced, type Judgement, judgedState } from "./judgement.ts";
import {
  allWorkSentence,
  blockedSentence,
  combinationSentence,
  freedSentence,
  heightOnlySentence,
  notBelieved,
  nothingFreesSentence,
  oneSideSentence,
  sitsOnStopSentence,
  travelKeptSentence,
  tryingFreesSentence,
  whySentence,
} from "./prescriptionSentences.ts";
import {
  type Found,
  type SearchOptions,
  type SearchProgress,
  searchSteps,
  told,
} from "./searchSteps.ts";
import type { Decided, Screened, Trial } from "./trials.ts";
import { type Freed, whatFreesSteps } from "./whatFrees.ts";

/** One thing to do, tested, the same on both sides. */
interface Prescribed {
  readonly none: false;
  readonly change: Change;
  readonly candidate: Candidate;
  readonly spacerMm: number;
  /** R5 class of the stop, N/mm. */
  readonly stopRateClass: number;
  /** Of the whole check with this combination, what it cannot change included. */
  readonly verdict: State;
  /** Of what it can change: ok or care. */
  readonly state: State;
  /** What could not be judged for want of ride data or events. */
  readonly unknown: readonly CheckId[];
  /** That it sits on its stop, where it does; else empty. To be said before anything else. */
  readonly first: Sentence;
  readonly message: Sentence;
  /** Why it is care, that travel is lost, that only one side was measured, and the like. */
  readonly remarks: readonly Sentence[];
  readonly trial: Trial;
}

/** Nothing that can be bought fits: what blocks it, and what frees it. */
interface NothingFits {
  readonly none: true;
  readonly blockedBy: readonly Blocked[];
  readonly freed: readonly Freed[];
  readonly first: Sentence;
  readonly message: Sentence;
  readonly remarks: readonly Sentence[];
}

export type Prescription = Prescribed | NothingFits;

export interface PrescribeProgress extends SearchProgress {
  /** That nothing fits is known already; what would free it is still being tried. */
  readonly soFar?: NothingFits;
}

/**
 * What to do about an axle: the best combination of stop and spacer, each put through the whole model on
 * every measured side; or what blocks them all, and which change of the vehicle would free one. Nothing
 * is prescribed from readings that do not fit together.
 */
export function* prescribeSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  given: SearchOptions,
): Generator<PrescribeProgress, Prescription, void> {
  const columns = new DrawnColumns(new SharedDraws(given.samples, given.seed));
  const options: SearchOptions = { ...given, columns, closings: new ClosingDraws() };
  const first = sitsOnStopSentence(fitment);
  const plain = given.assessed ? succeed(given.assessed) : assessStatic(fitment, options);
  const doubted = plain.ok ? notBelieved(fitment, plain.value) : null;
  if (doubted !== null) {
    const { blockedBy, sentence } = doubted;
    return { none: true, blockedBy, freed: [], first, message: sentence, remarks: [] };
  }
  const found = yield* searchSteps(fitment, others, options);
  if (found.best !== null) return prescribed(fitment, found.best, first);
  const nearest = yield* nearestOf(found);
  const blockedBy = nearest?.judgement.blocked ?? pressedBlocks(fitment);
  const doubtOnly =
    nearest !== null && blockedBy.every((each) => stateOf(nearest, each) === "unsure");
  const blocked: NothingFits = {
    none: true,
    blockedBy,
    freed: [],
    first,
    message: blockedSentence(fitment, nearest, blockedBy),
    remarks: [],
  };
  if (!doubtOnly) {
    const done = found.combinations.length;
    yield { done, total: done, soFar: { ...blocked, remarks: [tryingFreesSentence] } };
  }
  const freed = doubtOnly ? [] : yield* freedSteps(fitment, others, options, blocked);
  return {
    ...blocked,
    freed,
    remarks: doubtOnly
      ? []
      : freed.length === 0
        ? [nothingFreesSentence]
        : freed.map((each) => freedSentence(fitment, each)),
  };
}

/** What frees it, told as it is found. */
function* freedSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
  blocked: NothingFits,
): Generator<PrescribeProgress, readonly Freed[], void> {
  const steps = whatFreesSteps(fitment, others, options);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    const { freed, ...progress } = step.value;
    if (freed === undefined) {
      yield progress;
      continue;
    }
    const remarks = [...freed.map((each) => freedSentence(fitment, each)), tryingFreesSentence];
    yield { ...progress, soFar: { ...blocked, freed, remarks } };
  }
}

function prescribed(fitment: Fitment, trial: Trial, first: Sentence): Prescribed {
  const { combination, judgement, assessment } = trial;
  const remarks = [
    judgement.unknown.length > 0 ? heightOnlySentence(trial) : null,
    judgement.state === "care" ? whySentence(trial) : null,
    judgement.keepsTravel ? null : travelKeptSentence,
    fitment.corners.length === 1 ? oneSideSentence(fitment) : null,
    allWorkSentence(trial),
  ].filter((remark) => remark !== null);
  return {
    none: false,
    change: combination.change,
    candidate: combination.candidate,
    spacerMm: combination.spacerMm,
    stopRateClass: assessment.corners[0]?.stopRateClass ?? 0,
    verdict: assessment.verdict,
    state: judgement.state,
    unknown: judgement.unknown,
    first,
    message: combinationSentence(fitment, combination, judgement),
    remarks,
    trial,
  };
}

/**
 * The one that fails least, of the fitted stop at every height, else of the other stops as they are: what
 * stands in its way is what blocks. Null where none may stand at all. Clearance and early contact alone tell
 * how much fails at least, so that hits are run for those only that may fail least.
 */
function* nearestOf({
  trials,
  combinations,
}: Found): Generator<SearchProgress, Trial | null, void> {
  const fitted = combinations.filter(({ candidate }) => candidate.id === fittedId);
  const tried = fitted.length > 0 ? fitted : combinations.filter(({ spacerMm }) => spacerMm === 0);
  const total = tried.length;
  const asked: { readonly screened: Screened; readonly atLeast: number }[] = [];
  for (const combination of tried) {
    const screened = trials.screen(combination);
    if (!screened.ok) continue;
    const atLeast = failing(judgedState(screened.value.screening.checks()));
    asked.push({ screened: screened.value, atLeast });
    yield { done: 0, total };
  }
  let least = Number.POSITIVE_INFINITY;
  const failed: { readonly screened: Screened; readonly by: number }[] = [];
  for (const { screened, atLeast } of asked.sort((one, other) => one.atLeast - other.atLeast)) {
    if (atLeast > least) break;
    const done = failed.length;
    const by = failing(yield* told(trials.blocked(screened), () => ({ done, total })));
    failed.push({ screened, by });
    least = Math.min(least, by);
  }
  const near = failed.flatMap(({ screened, by }) => (by === least ? [screened] : []));
  const all: Decided[] = [];
  for (const screened of leastChanged(near)) {
    const judgement = yield* told(trials.decide(screened), () => ({ done: total, total }));
    all.push({ combination: screened.combination, judgement });
  }
  const [nearest] = all.sort(comparePlaced);
  if (nearest === undefined) return null;
  const trial = yield* told(trials.whole(nearest.combination), () => ({ done: total, total }));
  return trial.ok ? trial.value : null;
}

/** Those among which `comparePlaced` has to look at more than the travel kept and the number of changes. */
function leastChanged(all: readonly Screened[]): readonly Screened[] {
  const keeping = all.filter(({ place }) => place.keepsTravel);
  const first = keeping.length > 0 ? keeping : all;
  const of = ({ combination }: Screened) => changes.indexOf(combination.change);
  const fewest = Math.min(...first.map(of));
  return first.filter((screened) => of(screened) === fewest);
}

/** A check that fails counts more than any number in doubt. */
function failing({ state, blocked }: Pick<Judgement, "state" | "blocked">): number {
  return (state === "no" ? 100 : 0) + blocked.length;
}

function stateOf(trial: Trial, { side, check }: Blocked): State | undefined {
  return trial.assessment.corners
    .find((corner) => corner.side === side)
    ?.checks.find(({ id }) => id === check)?.state;
}

function pressedBlocks(fitment: Fitment): readonly Blocked[] {
  const pressed: readonly Side[] = pressedSides(fitment).map(({ side }) => side);
  const sides = pressed.length > 0 ? pressed : fitment.corners.map(({ side }) => side);
  return sides.map((side) => ({ side, check: "earlyContact" }));
}
