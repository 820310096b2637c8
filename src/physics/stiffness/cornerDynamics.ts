import * as messages from "../../words/compiled/physics/stiffness.ts";
import type {
  Corner,
  DoubtFromTest,
  EventResult,
  Fitment,
  Interval,
  Side,
  UseRules,
} from "../fitment.ts";
import {
  type ImpactSetup,
  impactSetupOf,
  settled,
  undampedTwin,
  unladen,
} from "../impact/impactSetup.ts";
import type { Fault } from "../outcome.ts";
import { rulesOf } from "../road/useRules.ts";
import { secantRate, stiffnessClasses, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { losesEnergy } from "../stop/stopAtSpeed.ts";
import { doubtFromTest } from "./doubtFromTest.ts";
import {
  type EventFailure,
  type EventsTried,
  type TryOptions,
  tryEvents,
} from "./eventFailures.ts";

/** Why a stop does not work in one event of the use, and in which state of the vehicle. */
export interface StateFailure extends EventFailure {
  readonly laden: boolean;
}

interface ClassFailure extends StateFailure {
  /** R5 class, N/mm. */
  readonly stiffnessClass: number;
}

/** The dynamic half of one corner's answer: one corner alone, mean masses and readings. */
export interface CornerDynamics {
  readonly side: Side;
  /** The stop as it is, laden, one result an event; null where it could not be computed: see `faults`. */
  readonly events: readonly EventResult[] | null;
  /** The same without what tests at speed show of it; null where they show nothing. */
  readonly undampedEvents: readonly EventResult[] | null;
  /** What the stop's test leaves open; null where it does not say. */
  readonly fromTest: DoubtFromTest | null;
  /** Whether the stop as it is, unscaled, works in every event laden and unladen; null beside no events. */
  readonly stopItselfPasses: boolean | null;
  /** What the stop as it is fails on. */
  readonly ownFailures: readonly StateFailure[];
  /** R5 classes, N/mm, rising; null where it could not be computed. */
  readonly classesThatWork: readonly number[] | null;
  /** Least and greatest of the classes that work; null beside a list = no class works here. */
  readonly classWindow: Interval | null;
  /**
   * What each class that does not work fails on, softest first; unladen only what works laden. Of what
   * the checks are judged by alone, one thing that each fails on.
   */
  readonly failures: readonly ClassFailure[];
  /** On which side of what works the stop lies; null where it works, or no class does. */
  readonly stiffnessSide: "soft" | "stiff" | null;
  readonly faults: readonly Fault[];
}

export interface CornerDynamicsOptions {
  /**
   * Only what the checks are judged by: which classes work, but not all that the others fail on, nothing of
   * the stop undamped, and what its test leaves open only where that decides.
   */
  readonly judgedAlone?: boolean;
}

/**
 * The design events of the use for the stop as it is, then for its static curve scaled to each R5 class
 * with its dashpot unscaled, laden and unladen, each from its own rest. A class works where it passes
 * every event in both. Yields between events, so that a caller may stop or wait.
 *
 * Errors are in `faults`: ride data that are unknown or unusable, no design event, or an event of the
 * stop itself that could not be computed.
 */
export function* cornerDynamicsSteps(
  fitment: Fitment,
  corner: Corner,
  { judgedAlone = false }: CornerDynamicsOptions = {},
): Generator<void, CornerDynamics, void> {
  const setup = impactSetupOf(fitment, corner, { loaded: true });
  if (!setup.ok) return unknown(corner.side, [setup.fault]);
  const rules = rulesOf(fitment.use, fitment.rules);
  if (rules.events.length === 0) return unknown(corner.side, [noEvents]);
  const own = yield* tryLaden(setup.value, rules);
  const events = own.tried.results.filter((result) => result !== null);
  if (events.length < own.tried.results.length) return unknown(corner.side, own.tried.faults);
  const ownUnladen = yield* tryUnladen(setup.value, rules);
  const ownFailures = [...own.failures, ...ownUnladen];
  const undampedEvents = judgedAlone ? null : yield* tryUndamped(setup.value, rules);
  const rate = secantRate(setup.value.stop);
  const classesThatWork: number[] = [];
  const failures: ClassFailure[] = [];
  for (const stiffnessClass of stiffnessClasses) {
    const scale = stiffnessClass / rate;
    const failed = isSame(scale)
      ? ownFailures
      : judgedAlone
        ? yield* firstFailure(setup.value, scale, rules, events)
        : yield* tryScaled(setup.value, scale, rules);
    if (failed.length === 0) classesThatWork.push(stiffnessClass);
    for (const failure of failed) failures.push({ stiffnessClass, ...failure });
  }
  const passes = ownFailures.length === 0;
  const mayDecide = passes && classesThatWork.includes(stiffnessClassOf(rate));
  const fromTest =
    judgedAlone && !mayDecide
      ? null
      : yield* doubtFromTest(fitment, setup.value, events, rules, function* (changed) {
          return (yield* tryUnladen(changed, rules, { toFirstFailure: true })).length > 0;
        });
  return {
    side: corner.side,
    events,
    undampedEvents,
    fromTest,
    stopItselfPasses: passes,
    ownFailures,
    classesThatWork,
    classWindow: windowOf(classesThatWork),
    failures,
    stiffnessSide: sideOfStop(stiffnessClassOf(rate), classesThatWork, ownFailures),
    faults: [],
  };
}

/** What decides about a stop's stiffness on one corner, without the other classes. */
export interface OwnHits {
  /**
   * Laden, one result an event; null where one could not be computed. To the first failure: of a stop that
   * fails not all, and the last not to its end.
   */
  readonly events: readonly EventResult[] | null;
  /** Would the stiffness check be ok? Null where it could not be computed. */
  readonly passes: boolean | null;
}

export type OwnHitsOptions = Pick<TryOptions, "toFirstFailure">;

/**
 * Whether a stop whose curve is known takes the hits of the use: itself, and its class, laden and unladen. As
 * `cornerDynamicsSteps` would find, without the other classes and what the stop would be undamped.
 * Yields between events.
 */
export function* ownHitsSteps(
  fitment: Fitment,
  corner: Corner,
  options: OwnHitsOptions = {},
): Generator<void, OwnHits, void> {
  const setup = impactSetupOf(fitment, corner, { loaded: true });
  const rules = rulesOf(fitment.use, fitment.rules);
  if (!setup.ok || rules.events.length === 0) return { events: null, passes: null };
  const own = yield* tryLaden(setup.value, rules, options);
  const events = own.tried.results.filter((result) => result !== null);
  if (events.length < own.tried.results.length) return { events: null, passes: null };
  if (own.failures.length > 0) return { events, passes: false };
  const first: OwnHitsOptions = { toFirstFailure: true };
  if ((yield* tryUnladen(setup.value, rules, first)).length > 0) return { events, passes: false };
  const rate = secantRate(setup.value.stop);
  const scale = stiffnessClassOf(rate) / rate;
  const failed = isSame(scale) ? [] : yield* firstFailure(setup.value, scale, rules, events);
  return { events, passes: failed.length === 0 };
}

/** The whole of `cornerDynamicsSteps` in one go. */
export function cornerDynamics(fitment: Fitment, corner: Corner): CornerDynamics {
  const steps = cornerDynamicsSteps(fitment, corner);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** A stop whose scaling is this near to 1 is the class itself. */
function isSame(scale: number): boolean {
  return Math.abs(scale - 1) < 1e-9;
}

interface LadenTried {
  readonly tried: EventsTried;
  readonly failures: readonly StateFailure[];
}

function* tryLaden(
  setup: ImpactSetup,
  rules: UseRules,
  options?: TryOptions,
): Generator<void, LadenTried, void> {
  const tried = yield* tryEvents(setup, rules, options);
  return { tried, failures: tried.failures.map((failure) => ({ ...failure, laden: true })) };
}

/** What a stop fails on without payload; nothing is run anew where there is none to take off. */
export function* tryUnladen(
  setup: ImpactSetup,
  rules: UseRules,
  options?: TryOptions,
): Generator<void, readonly StateFailure[], void> {
  if (setup.payloadKg === 0) return [];
  const empty = unladen(setup);
  if (!empty.ok) return notComputed(rules, false);
  const { failures } = yield* tryEvents(empty.value, rules, options);
  return failures.map((failure) => ({ ...failure, laden: false }));
}

/** What a scaled stop fails on: laden, and where it passes so, unladen. */
function* tryScaled(
  setup: ImpactSetup,
  stopScale: number,
  rules: UseRules,
): Generator<void, readonly StateFailure[], void> {
  const scaled = settled(setup, { stopScale });
  if (!scaled.ok) return notComputed(rules, true);
  const { failures } = yield* tryLaden(scaled.value, rules);
  return failures.length > 0 ? failures : yield* tryUnladen(scaled.value, rules);
}

/**
 * Something that a scaled stop fails on, laden or unladen; none where it passes all. What it likeliest
 * fails on is tried first: a softer one where the stop itself (`own`, laden) goes deepest, a stiffer one
 * where it hits hardest, and without payload.
 */
function* firstFailure(
  setup: ImpactSetup,
  stopScale: number,
  rules: UseRules,
  own: readonly EventResult[],
): Generator<void, readonly StateFailure[], void> {
  const scaled = settled(setup, { stopScale });
  if (!scaled.ok) return notComputed(rules, true);
  const figure = stopScale > 1 ? "peakAccelerationG" : "peakCompressionMm";
  const order = [...own.keys()].sort(
    (one, other) => (own[other]?.[figure] ?? 0) - (own[one]?.[figure] ?? 0),
  );
  const options: TryOptions = { toFirstFailure: true, order };
  const unladenFirst = stopScale > 1 ? yield* tryUnladen(scaled.value, rules, options) : [];
  if (unladenFirst.length > 0) return unladenFirst;
  const { failures } = yield* tryLaden(scaled.value, rules, options);
  if (failures.length > 0 || stopScale > 1) return failures;
  return yield* tryUnladen(scaled.value, rules, options);
}

function notComputed(rules: UseRules, laden: boolean): readonly StateFailure[] {
  return rules.events.map((_, eventIndex) => ({ eventIndex, kind: "notComputed", laden }));
}

function* tryUndamped(
  setup: ImpactSetup,
  rules: UseRules,
): Generator<void, readonly EventResult[] | null, void> {
  if (!losesEnergy(setup.atSpeed)) return null;
  const twin = undampedTwin(setup);
  if (!twin.ok) return null;
  const { results } = yield* tryEvents(twin.value, rules);
  const events = results.filter((result) => result !== null);
  return events.length === results.length ? events : null;
}

function windowOf(classes: readonly number[]): Interval | null {
  return classes.length === 0 ? null : [Math.min(...classes), Math.max(...classes)];
}

/**
 * On which side of the classes that work a class (N/mm) lies: the nearest of them, in log10, tells it,
 * for where that is stiffer this stop is too soft. Null inside, or where none works.
 */
export function sideOf(own: number, classes: readonly number[]): "soft" | "stiff" | null {
  if (classes.length === 0 || classes.includes(own)) return null;
  const nearest = classes.reduce((best, next) =>
    Math.abs(Math.log(next / own)) < Math.abs(Math.log(best / own)) ? next : best,
  );
  return nearest > own ? "soft" : "stiff";
}

/**
 * The same of the stop itself. A stop whose class works may fail by itself, for its secant may lie 26 %
 * off its class: soft where it bottoms or reaches the hard limit, else stiff.
 */
function sideOfStop(
  own: number,
  classes: readonly number[],
  failures: readonly StateFailure[],
): "soft" | "stiff" | null {
  if (!classes.includes(own)) return sideOf(own, classes);
  const kinds = failures.map(({ kind }) => kind);
  if (kinds.includes("fullStop") || kinds.includes("hardContact")) return "soft";
  return kinds.includes("acceleration") ? "stiff" : null;
}

const noEvents: Fault = {
  code: "noDesignEvent",
  sentence: [messages.noDesignEventIs],
};

function unknown(side: Side, faults: readonly Fault[]): CornerDynamics {
  return {
    side,
    events: null,
    undampedEvents: null,
    fromTest: null,
    stopItselfPasses: null,
    ownFailures: [],
    classesThatWork: null,
    classWindow: null,
    failures: [],
    stiffnessSide: null,
    faults,
  };
}
