import { gapOf, recordedGapOf } from "../budget/gap.ts";
import type { Corner, Fitment } from "../fitment.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import type { Kinematics } from "../kinematics/kinematics.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { curveAtRest, stopAtSpeed } from "../stop/stopAtSpeed.ts";
import { type StopCurve, stopCurve } from "../stop/stopCurve.ts";

/**
 * F_rec: force at the wheel, N, with which the stop that stood there held the vehicle up as it was
 * measured, F_stop(−g)·ds/dz at the ride height; 0 where there was none or it had a gap. Whatever other
 * stop is asked about, the springs carry less than the weight by this.
 *
 * Errors: those of `recordedGapOf`, `stopCurve` and `stopAtSpeed`.
 */
export function heldAtRide(
  fitment: Fitment,
  corner: Corner,
  kinematics: Kinematics,
): Outcome<number> {
  const gap = recordedGapOf(fitment, corner);
  if (!gap.ok) return gap;
  if (gap.value === null || gap.value >= 0) return succeed(0);
  const recorded = fitment.recordedStop ?? fitment.stop;
  const curve = stopCurve(recorded);
  if (!curve.ok) return curve;
  const parts = stopAtSpeed(recorded);
  if (!parts.ok) return parts;
  const force = curveAtRest(curve.value, parts.value).force(-gap.value);
  return succeed(force * closingAt(kinematics, 0).perMm);
}

/** The stop that is asked about as it bears on where the vehicle comes to rest. */
export interface RestingStop {
  /** The force that remains at rest. */
  readonly stop: StopCurve;
  /** Gap along the stop's axis at the measured ride height, mm; below 0 = pressed in. */
  readonly gapMm: number;
  /** What the stop that stood there held up then, N at the wheel. */
  readonly heldAtRideN: number;
}

/** Errors: those of `stopCurve`, `stopAtSpeed`, `gapOf` and `heldAtRide`. */
export function restingStop(
  fitment: Fitment,
  corner: Corner,
  kinematics: Kinematics,
): Outcome<RestingStop> {
  const curve = stopCurve(fitment.stop);
  if (!curve.ok) return curve;
  const parts = stopAtSpeed(fitment.stop);
  if (!parts.ok) return parts;
  const gap = gapOf(fitment, corner);
  if (!gap.ok) return gap;
  const held = heldAtRide(fitment, corner, kinematics);
  if (!held.ok) return held;
  return succeed({
    stop: curveAtRest(curve.value, parts.value),
    gapMm: gap.value,
    heldAtRideN: held.value,
  });
}
