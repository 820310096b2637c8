import {
  type AssessOptions,
  assessDrawn,
  assessStatic,
  completeAssessment,
  drawRequestsOf,
  type PreparedFitment,
  prepareFitment,
} from "../assess.ts";
import { gapOf } from "../budget/gap.ts";
import type { Assessment, Corner, Fitment } from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { rulesOf } from "../road/useRules.ts";
import {
  type CornerDynamics,
  cornerDynamicsSteps,
  type OwnHits,
} from "../stiffness/cornerDynamics.ts";
import { ClosingDraws, type ClosingSpan } from "../uncertainty/closingDraws.ts";
import {
  type CornerDraws,
  drawCornersSteps,
  type WantedTravel,
} from "../uncertainty/cornerDraws.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { SharedDraws } from "../uncertainty/sharedDraws.ts";
import { DrawnColumns, StopDraws } from "../uncertainty/stopDraws.ts";
import { type Candidate, type Combination, changeOf } from "./candidates.ts";
import { CheckedScreening } from "./checkedScreening.ts";
import { fitmentWithStop } from "./fitmentWithStop.ts";
import { type Judgement, judge, judgedEvents, judgedState, keepsTravel } from "./judgement.ts";
import {
  AssessedScreening,
  carryStateOf,
  DrawnScreening,
  type DrawnSide,
  mostOff,
  type Screening,
  surelySolid,
} from "./screening.ts";
import { geometryKey, heightKey, keyOf, travelKey } from "./sharedKeys.ts";
import { isJudgedByHits, StopHits, stiffnessChecks } from "./stopHits.ts";

/** A combination on the vehicle, before events. */
export interface Screened {
  readonly combination: Combination;
  readonly fitment: Fitment;
  readonly screening: Screening;
  readonly place: Pick<Judgement, "keepsTravel" | "heightMm">;
}

/** A combination that was judged by what decides about it alone. */
export interface Decided {
  readonly combination: Combination;
  readonly judgement: Judgement;
}

export interface DecidedFitment extends Decided {
  /** The vehicle with it. */
  readonly fitment: Fitment;
}

/** A combination that was put through the whole model. */
export interface Trial extends DecidedFitment {
  readonly assessment: Assessment;
}

export interface MadeWith {
  readonly side: Corner["side"];
  readonly wheelTravelToContactMm: number;
}

export interface TrialOptions extends AssessOptions {
  /** Wheel travel to contact that the vehicle was made with; absent: the fitted stop's. */
  readonly madeWith?: readonly MadeWith[];
  /** The whole assessment of the vehicle as it stands, where it is known: by the same draws. */
  readonly assessed?: Assessment;
  /** Draws of readings that several vehicles share; absent: its own. */
  readonly columns?: DrawnColumns;
  /** Closings of vehicles that differ in stops, limits, load and spring rates alone; absent: its own. */
  readonly closings?: ClosingDraws;
}

/** Puts combinations on one vehicle; each is worked out once. */
export class Trials {
  readonly #fitment: Fitment;
  readonly #options: TrialOptions;
  readonly #combinations: readonly Combination[];
  readonly #screened = new Map<string, Outcome<Omit<Screened, "combination" | "fitment">>>();
  readonly #complete = new Map<string, Outcome<Trial>>();
  /** Drawn together, and not assessed yet. */
  readonly #drawn = new Map<string, { ready: PreparedFitment; drawn: readonly CornerDraws[] }>();
  readonly #hits = new StopHits();
  readonly #closings: ClosingDraws;
  readonly #spans = new Map<Corner, ClosingSpan>();
  readonly #columns: DrawnColumns;
  #madeWith: readonly MadeWith[] | null;

  /** @param combinations all that `screen` will be asked about */
  constructor(fitment: Fitment, options: TrialOptions, combinations: readonly Combination[] = []) {
    this.#fitment = fitment;
    this.#options = options;
    this.#combinations = combinations;
    this.#columns =
      options.columns ?? new DrawnColumns(new SharedDraws(options.samples, options.seed));
    this.#closings = options.closings ?? new ClosingDraws();
    this.#madeWith = options.madeWith ?? null;
  }

  /** A candidate without a spacer. */
  plain(candidate: Candidate): Combination {
    return { candidate, spacerMm: 0, change: changeOf(candidate, 0) };
  }

  /**
   * Clearance, its doubt and early contact. A stop made for impacts that differs from another in its
   * forces alone has the same, so that these are worked out once. Errors: those of `assessStatic`.
   */
  screen(combination: Combination): Outcome<Screened> {
    const fitment = this.#fitmentOf(combination);
    if (!fitment.ok) return fitment;
    const key = heightKey(combination);
    const known = this.#screened.get(key) ?? this.#screen(combination, fitment.value);
    this.#screened.set(key, known);
    return known.ok ? succeed({ ...known.value, combination, fitment: fitment.value }) : known;
  }

  #screen(
    combination: Combination,
    fitment: Fitment,
  ): Outcome<Omit<Screened, "combination" | "fitment">> {
    const { assessed } = this.#options;
    if (assessed !== undefined && combination.change === "nothing") {
      const screening = new AssessedScreening(assessed, this.#hasEvents());
      return succeed({ screening, place: this.#placeOf(combination, assessed.corners) });
    }
    const ready = prepareFitment(fitment, this.#options);
    if (!ready.ok) return ready;
    const screening = this.#drawnScreening(fitment, ready.value) ?? this.#assessed(fitment);
    return succeed({
      screening,
      place: this.#placeOf(combination, screening.contact),
    });
  }

  #assessed(fitment: Fitment): Screening {
    const assessed = assessStatic(fitment, this.#options);
    if (!assessed.ok) throw new Error(assessed.fault.code);
    return new AssessedScreening(assessed.value, this.#hasEvents());
  }

  /** Null where closings alone do not decide about this stop. */
  #drawnScreening(fitment: Fitment, { prepared, draws, rules }: PreparedFitment): Screening | null {
    const sides: DrawnSide[] = [];
    for (const corner of prepared) {
      const { budget, wanted } = corner;
      const { limit } = budget.budget;
      if (limit === null || !surelySolid(fitment, budget)) return null;
      const geometry = geometryKey(corner);
      const travelAt = (state: "laden" | "unladen", travel: WantedTravel) =>
        this.#closings.atTravel(geometry, budget, draws, {
          travel,
          key: travelKey(fitment, corner, state, travel),
        });
      const { laden, unladen } = wanted;
      const travel =
        fitment.stop.duty === "carry"
          ? carryStateOf(fitment, corner, rules)
          : laden === null || unladen === null
            ? null
            : { laden: travelAt("laden", laden), unladen: travelAt("unladen", unladen) };
      if (travel === null) return null;
      const span = this.#spanOf(budget.corner);
      const beforeLimit = (reserve: number) =>
        this.#closings.beforeLimit(geometry, budget, draws, reserve, span);
      sides.push({
        side: budget.corner.side,
        wheelTravelToContactMm: budget.budget.contactMm,
        reserveMm: limit.reserveMm,
        stop: new StopDraws(budget, this.#columns),
        reserveWanted: beforeLimit(rules.reserveMm),
        reserveLeft: beforeLimit(0),
        travel,
      });
    }
    return new CheckedScreening(new DrawnScreening(sides), () => this.#assessed(fitment));
  }

  /** How far the stops of all combinations reach, with all that their own heights may be off. */
  #spanOf(corner: Corner): ClosingSpan {
    const known = this.#spans.get(corner) ?? this.#widestSpan(corner);
    this.#spans.set(corner, known);
    return known;
  }

  #widestSpan(corner: Corner): ClosingSpan {
    const stands = corner.gap ?? corner.pressedHeight ?? corner.seatToPad;
    let least = Number.POSITIVE_INFINITY;
    let greatest = Number.NEGATIVE_INFINITY;
    for (const combination of this.#combinations) {
      const fitment = this.#fitmentOf(combination);
      const gap = fitment.ok ? gapOf(fitment.value, corner) : fitment;
      if (!fitment.ok || !gap.ok || stands === undefined) continue;
      const { stop, recordedStop } = fitment.value;
      const off = mostOff(stop.freeHeight) + (recordedStop ? mostOff(recordedStop.freeHeight) : 0);
      const from = gap.value - meanOf(stands);
      const usable =
        stop.usableCompressionMm + (stop.usableTolMm ?? 0.05 * stop.usableCompressionMm);
      least = Math.min(least, from - off);
      greatest = Math.max(greatest, from + usable + off);
    }
    return least <= greatest ? { least, greatest } : { least: 0, greatest: 0 };
  }

  /**
   * Draws several combinations at once, so that the suspension is moved once a draw for all of them, each to be
   * put through the whole model afterwards. Yields now and then.
   */
  *drawTogether(combinations: readonly Combination[]): Generator<void, void, void> {
    const asked: { key: string; ready: PreparedFitment }[] = [];
    for (const combination of combinations) {
      const key = keyOf(combination);
      const isKnown = combination.change === "nothing" && this.#options.assessed !== undefined;
      if (isKnown || this.#complete.has(key)) continue;
      const fitment = this.#fitmentOf(combination);
      const ready = fitment.ok ? prepareFitment(fitment.value, this.#options) : fitment;
      if (ready.ok) asked.push({ key, ready: ready.value });
      yield;
    }
    const [first] = asked;
    if (first === undefined) return;
    const { draws, rules } = first.ready;
    const requests = asked.map(({ ready }) => drawRequestsOf(ready));
    const drawn = yield* drawCornersSteps(requests.flat(), draws, rules.reserveMm);
    let from = 0;
    for (const [index, { key, ready }] of asked.entries()) {
      const end = from + (requests[index]?.length ?? 0);
      this.#drawn.set(key, { ready, drawn: drawn.slice(from, end) });
      from = end;
    }
  }

  /** With every event and stiffness class; yields between events. Errors: those of `assessStatic`. */
  *whole(combination: Combination): Generator<void, Outcome<Trial>, void> {
    const key = keyOf(combination);
    const known = this.#complete.get(key);
    if (known !== undefined) return known;
    const fitment = this.#fitmentOf(combination);
    if (!fitment.ok) return fitment;
    const asItStands = combination.change === "nothing" ? this.#options.assessed : undefined;
    const assessed = asItStands ? succeed(asItStands) : yield* this.#assess(fitment.value, key);
    if (!assessed.ok) return assessed;
    const assessment = assessed.value;
    const place = this.#placeOf(combination, assessment.corners);
    const trial = succeed<Trial>({
      combination,
      fitment: fitment.value,
      assessment,
      judgement: judge(assessment, fitment.value, place),
    });
    this.#complete.set(key, trial);
    return trial;
  }

  *#assess(fitment: Fitment, key: string): Generator<void, Outcome<Assessment>, void> {
    const together = this.#drawn.get(key);
    this.#drawn.delete(key);
    const before = together
      ? succeed(assessDrawn(fitment, together.ready, together.drawn))
      : assessStatic(fitment, this.#options);
    yield;
    if (!before.ok) return before;
    const dynamics: CornerDynamics[] = [];
    for (const corner of fitment.corners)
      dynamics.push(yield* cornerDynamicsSteps(fitment, corner, { judgedAlone: true }));
    return succeed(completeAssessment(fitment, before.value, dynamics));
  }

  /**
   * The judgement that `whole` would come to, by what decides about this stop alone, or by `whole` itself
   * where that is more than its own hits. Yields between events.
   */
  *decide(screened: Screened): Generator<void, Judgement, void> {
    const { combination, fitment, place } = screened;
    if (!isJudgedByHits(fitment.stop)) {
      const trial = yield* this.whole(combination);
      if (trial.ok) return trial.value.judgement;
    }
    const state = yield* this.#stateByHits(screened);
    const hits = yield* this.#hits.of(screened);
    return { ...state, ...this.#order(screened, hits), ...place };
  }

  /** Of that judgement what stands in the way. */
  *blocked(screened: Screened): Generator<void, Pick<Judgement, "state" | "blocked">, void> {
    return isJudgedByHits(screened.fitment.stop)
      ? yield* this.#stateByHits(screened)
      : yield* this.decide(screened);
  }

  *#stateByHits(screened: Screened) {
    const { fitment, screening } = screened;
    const hits = yield* this.#hits.of(screened);
    const checks = [...screening.checks(), ...stiffnessChecks(fitment, hits)];
    return judgedState(
      fitment.corners.flatMap(({ side }) => checks.filter((check) => check.side === side)),
    );
  }

  /** `decide` of a combination that was not looked at yet. Errors: those of `assessStatic`. */
  *decided(combination: Combination): Generator<void, Outcome<DecidedFitment>, void> {
    const screened = this.screen(combination);
    if (!screened.ok) return screened;
    const { fitment } = screened.value;
    return succeed({ combination, fitment, judgement: yield* this.decide(screened.value) });
  }

  /**
   * What the order of combinations goes by, for one whose clearance and early contact are fine; null where
   * its stiffness is not. Yields between events.
   */
  *placed(screened: Screened): Generator<void, Judgement | null, void> {
    const { fitment, place } = screened;
    const isKnown = fitment.stop.estimated === undefined;
    const hits = yield* this.#hits.of(screened, { toFirstFailure: isKnown });
    const checks = stiffnessChecks(fitment, hits);
    const { state, blocked, unknown } = judgedState(checks);
    if (blocked.length > 0 && isKnown) return null;
    return { state, blocked, unknown, ...this.#order(screened, hits), ...place };
  }

  /** Is it ok in all? What its hits and a few draws tell goes before all draws. Yields between events. */
  *isOk(screened: Screened): Generator<void, boolean, void> {
    const { fitment, screening } = screened;
    const isKnown = fitment.stop.estimated === undefined;
    const hits = yield* this.#hits.of(screened, { toFirstFailure: isKnown });
    const { state } = judgedState(stiffnessChecks(fitment, hits));
    if (isKnown && state !== "ok") return false;
    const isFine = screening.isFine("earlyContact", "ok") && screening.isFine("clearance", "ok");
    if (!isFine || isJudgedByHits(fitment.stop)) return isFine;
    return (yield* this.decide(screened)).state === "ok";
  }

  #order({ fitment, screening }: Screened, hits: readonly OwnHits[]) {
    return {
      ...judgedEvents(
        hits.flatMap(({ events }) => events ?? []),
        fitment,
      ),
      leastProbability: screening.leastProbability(),
    };
  }

  #hasEvents(): boolean {
    return rulesOf(this.#fitment.use, this.#fitment.rules).events.length > 0;
  }

  #placeOf(
    { candidate, spacerMm }: Combination,
    contact: Screening["contact"],
  ): Pick<Judgement, "keepsTravel" | "heightMm"> {
    this.#madeWith ??= this.#fittedTravel();
    const heightMm = meanOf(candidate.stop.freeHeight) + spacerMm;
    const taller = heightMm > meanOf(this.#fitment.stop.freeHeight);
    return { keepsTravel: !taller || keepsTravel(contact, this.#madeWith), heightMm };
  }

  #fitmentOf({ candidate, spacerMm, change }: Combination): Outcome<Fitment> {
    return change === "nothing"
      ? succeed(this.#fitment)
      : fitmentWithStop(this.#fitment, candidate.stop, spacerMm);
  }

  #fittedTravel(): readonly MadeWith[] {
    const ready = prepareFitment(this.#fitment, this.#options);
    if (!ready.ok) return [];
    return ready.value.prepared.map(({ budget }) => ({
      side: budget.corner.side,
      wheelTravelToContactMm: budget.budget.contactMm,
    }));
  }
}
