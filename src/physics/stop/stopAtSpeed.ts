import * as messages from "../../words/compiled/physics/stop.ts";
import type { Stop, StopBranch } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { type StopDamping, stopDamping } from "./damping.ts";
import type { StopCurve } from "./stopCurve.ts";

/**
 * What tests at speed show of a stop beside its static curve. Each part is absent unless a test shows
 * it: a static test says nothing of any (common practice, no source).
 */
export interface StopAtSpeed {
  /** Force that follows the speed; null: none. */
  readonly dashpot: StopDamping | null;
  /** h: loss that does not vanish at rest, a share of the static force. */
  readonly restLoss: number;
  /** e: share of the static curve that remains at rest. */
  readonly staticShare: number;
  /** Parts of the force that fade, each with its own time. */
  readonly branches: readonly StopBranch[];
}

/** A stop of which only the static curve is known. */
export const staticOnly: StopAtSpeed = {
  dashpot: null,
  restLoss: 0,
  staticShare: 1,
  branches: [],
};

/** The force that remains at rest over the compression, e·F∞, as a curve. */
export function curveAtRest(curve: StopCurve, { staticShare }: StopAtSpeed): StopCurve {
  return staticShare === 1 ? curve : curve.scaled(staticShare);
}

/** True where energy is lost in the stop. */
export function losesEnergy({ dashpot, restLoss, branches }: StopAtSpeed): boolean {
  return dashpot !== null || restLoss > 0 || branches.length > 0;
}

/**
 * The parts of a stop's force found by tests at speed; `staticOnly` where it was not tested so.
 * Branches without stiffness are left out.
 *
 * Errors: those of `stopDamping`; `restLossNotUsable` (0 … 1), `staticShareNotUsable` (above 0, at
 * most 1), `branchNotUsable` (a time above 0 s, a share of 0 or more).
 */
export function stopAtSpeed(stop: Stop): Outcome<StopAtSpeed> {
  if (!stop.testedAtSpeed) return succeed(staticOnly);
  const damping = stopDamping(stop);
  if (!damping.ok) return damping;
  const { restLoss = 0, staticShare = 1, branches = [] } = stop;
  if (!(restLoss >= 0 && restLoss <= 1)) {
    return fail("restLossNotUsable", [messages.stopsRestLossIs]);
  }
  if (!(staticShare > 0 && staticShare <= 1)) {
    return fail("staticShareNotUsable", [messages.shareOfStopsForce]);
  }
  for (const { tauS, share } of branches) {
    if (!(tauS > 0 && Number.isFinite(tauS) && share >= 0 && Number.isFinite(share))) {
      return fail("branchNotUsable", [messages.fadingPartOfStops]);
    }
  }
  return succeed({
    dashpot: stop.damping === null || stop.damping.length === 0 ? null : damping.value,
    restLoss,
    staticShare,
    branches: branches.filter(({ share }) => share > 0),
  });
}
