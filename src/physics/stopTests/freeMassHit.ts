import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { StopAtSpeed } from "../stop/stopAtSpeed.ts";
import type { StopCurve } from "../stop/stopCurve.ts";
import { StopForce } from "../stop/stopForce.ts";

/** One hit, J, N, mm and mm/s. */
export interface FreeMassHit {
  readonly peakForceN: number;
  readonly peakCompressionMm: number;
  readonly leaveSpeedMmPerS: number;
  readonly energyInJ: number;
  readonly energyOutJ: number;
}

/** Steps of a contact: the error of a peak falls with their square, below 1e-5 with so many. */
const mostStepsPerContact = 8000;
/** A contact is over within so many times that of a spring of the curve's rate. */
const longest = 40;
/** … or the mass moves at less than this share of its first speed. */
const creeping = 0.01;

/**
 * A free mass, kg, that meets a stop at a speed, m/s, without weight: m·ẍ = −F, with the force of
 * `StopForce`. By Heun's method in `stepsPerContact` steps, that begin as a share of the half period of the mass on the
 * stop's secant at the depth which its energy reaches. The mass leaves as x comes back to 0.
 *
 * Errors: "hitNotUsable"; "hitHasNoEnd" where the stop gives the mass back within no usable time.
 */
export function freeMassHit(
  curve: StopCurve,
  parts: StopAtSpeed,
  massKg: number,
  speedMPerS: number,
  stepsPerContact = mostStepsPerContact,
): Outcome<FreeMassHit> {
  if (!(massKg > 0 && speedMPerS > 0 && Number.isFinite(massKg) && Number.isFinite(speedMPerS))) {
    return fail("hitNotUsable", [messages.hitNeedsMassAnd]);
  }
  const stop = new StopForce(curve, parts);
  const depth = depthOf(curve, 500 * massKg * speedMPerS ** 2);
  const rate = Math.max(curve.force(depth) / depth, 1e-9);
  // N/mm over kg is 1000/s².
  const halfPeriod = Math.PI / Math.sqrt((1000 * rate) / massKg);
  const dt = halfPeriod / stepsPerContact;
  const branches = stop.branchCount;
  const [states, rates, next, nextRates] = Array.from(
    { length: 4 },
    () => new Float64Array(branches),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const force = (x: number, v: number, of: Float64Array) =>
    Math.max(0, stop.whole(x, stop.curveForce(x), v, v, stop.restLossShare(v), of, 0));
  let [x, v, f] = [0, 1000 * speedMPerS, 0];
  f = force(x, v, states);
  let [peakForceN, peakCompressionMm, energyIn, energyOut] = [f, 0, 0, 0];
  for (let step = 0; step < longest * stepsPerContact; step++) {
    stop.relaxation(stop.curveForce(x), states, 0, rates, 0);
    const a = (-1000 * f) / massKg;
    const tryX = x + dt * v;
    const tryV = v + dt * a;
    for (let i = 0; i < branches; i++) {
      next[i] = states[i] + dt * rates[i];
    }
    stop.relaxation(stop.curveForce(tryX), next, 0, nextRates, 0);
    const tryF = force(tryX, tryV, next);
    const newX = x + (dt * (v + tryV)) / 2;
    const newV = v + (dt * (a - (1000 * tryF) / massKg)) / 2;
    for (let i = 0; i < branches; i++) {
      states[i] = states[i] + (dt * (rates[i] + nextRates[i])) / 2;
    }
    if (newX <= 0 && newV < 0) {
      return succeed({
        peakForceN,
        peakCompressionMm,
        leaveSpeedMmPerS: -newV,
        energyInJ: energyIn / 1000,
        energyOutJ: energyOut / 1000,
      });
    }
    const newF = force(newX, newV, states);
    const work = ((f + newF) / 2) * (newX - x);
    if (work > 0) energyIn += work;
    else energyOut -= work;
    [x, v, f] = [newX, newV, newF];
    if (![x, v, f].every(Number.isFinite)) break;
    peakForceN = Math.max(peakForceN, f);
    peakCompressionMm = Math.max(peakCompressionMm, x);
  }
  // So much is lost that the mass only creeps back.
  if (Math.abs(v) < creeping * 1000 * speedMPerS) {
    const [energyInJ, energyOutJ] = [energyIn / 1000, energyOut / 1000];
    return succeed({ peakForceN, peakCompressionMm, leaveSpeedMmPerS: 0, energyInJ, energyOutJ });
  }
  return fail("hitHasNoEnd", [messages.thisHitCouldNot]);
}

/** Depth, mm, at which the curve holds this energy, N·mm, above 0. */
function depthOf(curve: StopCurve, energy: number): number {
  let high = 1;
  while (curve.energy(high) < energy && high < 1e6) high *= 2;
  let low = 0;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (curve.energy(middle) < energy) low = middle;
    else high = middle;
  }
  return high;
}
