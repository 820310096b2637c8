import * as messages from "../../words/compiled/physics/road.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import type { Kinematics } from "../kinematics/kinematics.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { standardGravity } from "../standardGravity.ts";
import type { StopCurve } from "../stop/stopCurve.ts";

export interface RestCorner {
  readonly kinematics: Kinematics;
  /** Its force at rest, N: `curveAtRest` of a stop tested at speed. */
  readonly stop: Pick<StopCurve, "force">;
  /** Gap along the stop's axis at the measured ride height, mm; below 0 = pressed in already. */
  readonly gapMm: number;
  /** F_rec of `heldAtRide`, N at the wheel: what the stop held up when the ride height was measured. */
  readonly heldAtRideN: number;
  /** Ride spring's rate at the wheel, N/mm. */
  readonly wheelRateNPerMm: number;
}

/** Terms that the formulas name in words. */
const inWords = {
  payload: termNames.payload,
  sag: termNames.sag,
  springAlone: termNames.springAlone,
};

export const payloadFormula = messages.payloadG({ payload: termNames.payload });

/** N */
export function payloadForce(payloadKg: number): number {
  return payloadKg * standardGravity;
}

export const springRestFormulas = {
  free: messages.payloadGKw(inWords),
  held: messages.payloadGFRec(inWords),
} as const;

/** Where the springs alone would bring it to rest, mm: `load` and `held` N at the wheel, `rate` N/mm. */
export function springRest(load: number, held: number, rate: number): number {
  return (load + held) / rate;
}

export const stopAtWheelFormula = {
  text: messages.fStopDsDz,
  by: "F_stop·ds/dz",
} as const;

/** Force of the stop at the wheel, N, by virtual work. */
export function stopAtWheel(stopForce: number, stopPerWheel: number): number {
  return stopForce * stopPerWheel;
}

/** By whether the stop touches there, and whether one held the vehicle up as it was measured. */
export const sagFormulas = {
  free: messages.sagPayloadGKw(inWords),
  held: messages.sagPayloadGF(inWords),
  touching: messages.sagPayloadGFStop(inWords),
  heldTouching: messages.sagPayloadGFRec(inWords),
} as const;

const mostHalvings = 200;

/**
 * Wheel travel z at which the vehicle comes to rest under a payload, mm from the measured ride height,
 * jounce positive: kw·z + F_stop(s(z) − g)·ds/dz − F_rec = payload·g. By virtual work; the spring is
 * linear. Without payload the stop that was measured leaves it at 0; a taller one holds the vehicle up
 * (z < 0), and onto a lower or softer one than that which held it up it settles (z > 0).
 *
 * Errors: "payloadNotANumber"; "wheelRateNotPositive"; "sagOutOfReach" where the layout
 * cannot move as far as the payload takes it.
 */
export function restPosition(corner: RestCorner, payloadKg: number): Outcome<number> {
  if (!Number.isFinite(payloadKg)) {
    return fail("payloadNotANumber", [messages.payloadIsNotNumber], "ride.payloadPerCornerKg");
  }
  if (!(corner.wheelRateNPerMm > 0 && Number.isFinite(corner.wheelRateNPerMm))) {
    return fail("wheelRateNotPositive", [messages.springsRateAtWheel], "ride.wheelRateNPerMm");
  }
  const load = payloadForce(payloadKg);
  const excess = (z: number): number => {
    const { closingMm, perMm } = closingAt(corner.kinematics, z);
    return (
      corner.wheelRateNPerMm * z +
      (stopAtWheel(corner.stop.force(closingMm - corner.gapMm), perMm) - corner.heldAtRideN) -
      load
    );
  };
  const springAlone = springRest(load, corner.heldAtRideN, corner.wheelRateNPerMm);
  const [least, greatest] = corner.kinematics.range;
  if (load === 0 && excess(0) === 0) return succeed(0);
  if (springAlone >= least && springAlone <= greatest && excess(springAlone) === 0) {
    return succeed(springAlone);
  }
  let low = least;
  let high = Math.min(greatest, springAlone);
  const pastReach = springAlone > greatest && excess(greatest) < 0;
  if (pastReach || springAlone < least || excess(least) > 0) {
    return fail(
      "sagOutOfReach",
      [messages.underThisPayloadWheel({ springAlone: length(springAlone) })],
      "ride.payloadPerCornerKg",
    );
  }
  for (let halving = 0; halving < mostHalvings; halving++) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) break;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return succeed(high);
}
