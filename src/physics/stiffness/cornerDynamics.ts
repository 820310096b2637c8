import type { Corner, EventResult, Fitment, Interval, Side, UseRules } from "../fitment.ts";
import { type ImpactSetup, impactSetupOf, settled } from "../impact/impactSetup.ts";
import type { Fault } from "../outcome.ts";
import { rulesOf } from "../road/useRules.ts";
import { secantRate, stiffnessClasses, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { type EventFailure, tryEvents } from "./eventFailures.ts";

/** Why a stiffness class does not work in one event of the use. */
export interface ClassFailure extends EventFailure {
  /** R5 class, N/mm. */
  readonly stiffnessClass: number;
}

/** The dynamic half of one corner's answer (model section 5), for the loaded state. */
export interface CornerDynamics {
  readonly side: Side;
  /** The stop as it is, one result an event; null where it could not be computed: see `faults`. */
  readonly events: readonly EventResult[] | null;
  /** R5 classes, N/mm, rising; null where it could not be computed. */
  readonly classesThatWork: readonly number[] | null;
  /** Least and greatest of the classes that work; null beside a list = no class works here. */
  readonly classWindow: Interval | null;
  /** What each class that does not work fails on, softest first. */
  readonly failures: readonly ClassFailure[];
  /** On which side of the classes that work the stop's own class lies; null inside or where none work. */
  readonly stiffnessSide: "soft" | "stiff" | null;
  readonly faults: readonly Fault[];
}

/**
 * The design events of the use for the stop as it is, then for its static curve scaled to each R5 class
 * with its damping unscaled, loaded. Yields between events, so that a caller may stop or wait.
 *
 * Errors are in `faults`: ride data that are unknown or unusable, no design event, or an event of the
 * stop itself that could not be computed.
 */
export function* cornerDynamicsSteps(
  fitment: Fitment,
  corner: Corner,
): Generator<void, CornerDynamics, void> {
  const setup = impactSetupOf(fitment, corner, { loaded: true });
  if (!setup.ok) return unknown(corner.side, [setup.fault]);
  const rules = rulesOf(fitment.use, fitment.rules);
  if (rules.events.length === 0) return unknown(corner.side, [noEvents]);
  const own = yield* tryEvents(setup.value, rules);
  const events = own.results.filter((result) => result !== null);
  if (events.length < own.results.length) return unknown(corner.side, own.faults);
  const rate = secantRate(setup.value.stop);
  const classesThatWork: number[] = [];
  const failures: ClassFailure[] = [];
  for (const stiffnessClass of stiffnessClasses) {
    const scale = stiffnessClass / rate;
    const failed = isSame(scale) ? own.failures : yield* tryScaled(setup.value, scale, rules);
    if (failed.length === 0) classesThatWork.push(stiffnessClass);
    for (const failure of failed) failures.push({ stiffnessClass, ...failure });
  }
  return {
    side: corner.side,
    events,
    classesThatWork,
    classWindow: windowOf(classesThatWork),
    failures,
    stiffnessSide: sideOf(stiffnessClassOf(rate), classesThatWork),
    faults: [],
  };
}

/** The same in one go. */
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

function* tryScaled(
  setup: ImpactSetup,
  stopScale: number,
  rules: UseRules,
): Generator<void, readonly EventFailure[], void> {
  const scaled = settled(setup, { stopScale });
  if (scaled.ok) return (yield* tryEvents(scaled.value, rules)).failures;
  return rules.events.map((_, eventIndex) => ({ eventIndex, kind: "notComputed" }));
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

const noEvents: Fault = {
  code: "noDesignEvent",
  sentence: ["No design event is set, so the stiffness cannot be judged. Set a bump or a landing."],
};

function unknown(side: Side, faults: readonly Fault[]): CornerDynamics {
  return {
    side,
    events: null,
    classesThatWork: null,
    classWindow: null,
    failures: [],
    stiffnessSide: null,
    faults,
  };
}
