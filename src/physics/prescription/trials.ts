import { type AssessOptions, assessStatic, completeAssessment } from "../assess.ts";
import type {
  Assessment,
  Check,
  Corner,
  CornerAssessment,
  Fitment,
  State,
  UseRules,
} from "../fitment.ts";
import { impactSetupOf } from "../impact/impactSetup.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { rulesOf } from "../road/useRules.ts";
import { type CornerDynamics, cornerDynamicsSteps } from "../stiffness/cornerDynamics.ts";
import { tryEvents } from "../stiffness/eventFailures.ts";
import { isProgressive } from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { type Candidate, type Combination, changeOf, fittedId } from "./candidates.ts";
import { fitmentWithStop } from "./fitmentWithStop.ts";
import { isUnknown, type Judgement, judge, keepsTravel } from "./judgement.ts";

/** A combination on the vehicle, before events: reserve and early contact are known. */
export interface StaticTrial {
  readonly combination: Combination;
  readonly fitment: Fitment;
  readonly assessment: Assessment;
  /** Worst over both sides; "ok" where it is not known for want of ride data. */
  readonly clearance: State;
  readonly earlyContact: State;
  readonly judgement: Judgement;
}

/** A combination that was put through the whole model. */
export interface Trial extends StaticTrial {
  readonly complete: true;
}

export interface MadeWith {
  readonly side: Corner["side"];
  readonly wheelTravelToContactMm: number;
}

export interface TrialOptions extends AssessOptions {
  /** Wheel travel to contact that the vehicle was made with; absent: the fitted stop's. */
  readonly madeWith?: readonly MadeWith[];
}

/** Puts combinations on one vehicle; each is worked out once. */
export class Trials {
  readonly #fitment: Fitment;
  readonly #options: TrialOptions;
  readonly #static = new Map<string, Outcome<StaticTrial>>();
  readonly #complete = new Map<string, Outcome<Trial>>();
  readonly #own = new Map<string, Judgement | null>();
  #madeWith: readonly MadeWith[] | null;

  constructor(fitment: Fitment, options: TrialOptions) {
    this.#fitment = fitment;
    this.#options = options;
    this.#madeWith = options.madeWith ?? null;
  }

  /** A candidate without a spacer. */
  plain(candidate: Candidate): Combination {
    return { candidate, spacerMm: 0, change: changeOf(candidate, 0) };
  }

  /**
   * Travel budget, doubt and early contact. A stop made for impacts that differs from another in its
   * forces alone has the same, so that these are worked out once. Errors: those of `assessStatic`.
   */
  before(combination: Combination): Outcome<StaticTrial> {
    const key = heightKey(combination);
    const known = this.#static.get(key);
    if (known?.ok) {
      const fitment = this.#fitmentOf(combination);
      return fitment.ok
        ? succeed({ ...known.value, combination, fitment: fitment.value })
        : fitment;
    }
    if (known !== undefined) return known;
    const trial = this.#tryStatic(combination);
    this.#static.set(key, trial);
    return trial;
  }

  /** With every event and stiffness class; yields between events. Errors: those of `assessStatic`. */
  *whole(combination: Combination): Generator<void, Outcome<Trial>, void> {
    const key = keyOf(combination);
    const known = this.#complete.get(key);
    if (known !== undefined) return known;
    const before = this.#tryStatic(combination);
    yield;
    if (!before.ok) return before;
    const { fitment } = before.value;
    const dynamics: CornerDynamics[] = [];
    for (const corner of fitment.corners)
      dynamics.push(yield* cornerDynamicsSteps(fitment, corner));
    const assessment = completeAssessment(fitment, before.value.assessment, dynamics);
    const trial = succeed<Trial>({
      ...before.value,
      assessment,
      judgement: judge(assessment, fitment, before.value.judgement),
      complete: true,
    });
    this.#complete.set(key, trial);
    return trial;
  }

  /**
   * The events of the use with the combination's own stop, laden, and what of the order they decide;
   * null where it fails one, so that its stiffness cannot be ok. Yields between events.
   */
  *ownEvents(trial: StaticTrial): Generator<void, Judgement | null, void> {
    const key = keyOf(trial.combination);
    const known = this.#own.get(key);
    if (known !== undefined) return known;
    const own = yield* this.#tryOwnEvents(trial);
    this.#own.set(key, own);
    return own;
  }

  *#tryOwnEvents(trial: StaticTrial): Generator<void, Judgement | null, void> {
    const { fitment } = trial;
    const rules = rulesOf(fitment.use, fitment.rules);
    let peak = 0;
    let deepest = 0;
    for (const corner of fitment.corners) {
      const setup = impactSetupOf(fitment, corner, { loaded: true });
      if (!setup.ok) return trial.judgement;
      const tried = yield* tryEvents(setup.value, rules);
      if (fitment.stop.estimated === undefined && tried.failures.length > 0) return null;
      for (const result of tried.results) {
        peak = Math.max(peak, result?.peakAccelerationG ?? 0);
        deepest = Math.max(deepest, result?.peakCompressionMm ?? 0);
      }
    }
    return {
      ...trial.judgement,
      peakAccelerationG: peak,
      compressionLeft: 1 - deepest / fitment.stop.usableCompressionMm,
    };
  }

  #tryStatic(combination: Combination): Outcome<StaticTrial> {
    const { candidate, spacerMm } = combination;
    const changed = this.#fitmentOf(combination);
    if (!changed.ok) return changed;
    const assessed = assessStatic(changed.value, this.#options);
    if (!assessed.ok) return assessed;
    const { corners } = assessed.value;
    this.#madeWith ??= this.#fittedTravel();
    const heightMm = meanOf(candidate.stop.freeHeight) + spacerMm;
    const rules = rulesOf(this.#fitment.use, this.#fitment.rules);
    const taller = heightMm > meanOf(this.#fitment.stop.freeHeight);
    return succeed({
      combination,
      fitment: changed.value,
      assessment: assessed.value,
      clearance: worstOf(corners, "clearance", rules),
      earlyContact: worstOf(corners, "earlyContact", rules),
      judgement: judge(assessed.value, changed.value, {
        keepsTravel: !taller || keepsTravel(corners, this.#madeWith),
        heightMm,
      }),
    });
  }

  #fitmentOf({ candidate, spacerMm, change }: Combination): Outcome<Fitment> {
    return change === "nothing"
      ? succeed(this.#fitment)
      : fitmentWithStop(this.#fitment, candidate.stop, spacerMm);
  }

  #fittedTravel(): readonly MadeWith[] {
    const assessed = assessStatic(this.#fitment, this.#options);
    return assessed.ok ? assessed.value.corners : [];
  }
}

function keyOf({ candidate, spacerMm }: Combination): string {
  return `${candidate.id} ${spacerMm}`;
}

/** What reserve and early contact of a combination depend on. */
function heightKey({ candidate, spacerMm }: Combination): string {
  const { id, stop } = candidate;
  const curve = stop.duty === "carry" ? null : stopCurve(stop);
  if (!curve?.ok) return `${id} ${spacerMm}`;
  const { freeHeight, usableCompressionMm, usableTolMm } = stop;
  return JSON.stringify([
    spacerMm,
    id === fittedId,
    freeHeight,
    usableCompressionMm,
    usableTolMm,
    isProgressive(curve.value),
  ]);
}

const badness: Readonly<Record<State, number>> = { ok: 0, care: 1, unsure: 2, no: 3 };

function worstOf(corners: readonly CornerAssessment[], id: Check["id"], rules: UseRules): State {
  let worst: State = "ok";
  for (const corner of corners) {
    for (const check of corner.checks) {
      if (check.id !== id || isUnknown(check, corner, rules)) continue;
      if (badness[check.state] > badness[worst]) worst = check.state;
    }
  }
  return worst;
}
