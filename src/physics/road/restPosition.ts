import type { Kinematics } from "../kinematics/kinematics.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import type { StopCurve } from "../stop/stopCurve.ts";

/** Standard gravity, m/s². Source: NIST SP 811, App. B. */
export const standardGravity = 9.80665;

export interface RestCorner {
  readonly kinematics: Kinematics;
  readonly stop: Pick<StopCurve, "force">;
  /** Gap along the stop's axis at the measured ride height, mm; below 0 = pressed in already. */
  readonly gapMm: number;
  /** Ride spring's rate at the wheel, N/mm. */
  readonly wheelRateNPerMm: number;
}

const mostHalvings = 200;

/**
 * Wheel travel z at which the vehicle comes to rest under a payload, mm from the measured ride height,
 * jounce positive: kw·z + F_stop(s(z) − g)·ds/dz = payload·g. By virtual work; the spring is linear.
 * Without payload and with g ≥ 0 it is 0; a stop made taller than its gap (g < 0) holds the vehicle up
 * (z < 0).
 *
 * Errors: "payloadNotANumber"; "wheelRateNotPositive"; "sagOutOfReach" where the layout
 * cannot move as far as the payload takes it.
 */
export function restPosition(corner: RestCorner, payloadKg: number): Outcome<number> {
  if (!Number.isFinite(payloadKg)) {
    return fail(
      "payloadNotANumber",
      ["The payload is not a number. Enter the load this corner carries in use."],
      "ride.payloadPerCornerKg",
    );
  }
  if (!(corner.wheelRateNPerMm > 0 && Number.isFinite(corner.wheelRateNPerMm))) {
    return fail(
      "wheelRateNotPositive",
      ["The spring's rate at the wheel must be above 0. Check the wheel rate."],
      "ride.wheelRateNPerMm",
    );
  }
  const load = payloadKg * standardGravity;
  const closing = new Float64Array(3);
  const excess = (z: number): number => {
    corner.kinematics.evaluate(z, closing);
    const s = closing[0] as number;
    const slope = closing[1] as number;
    return corner.wheelRateNPerMm * z + corner.stop.force(s - corner.gapMm) * slope - load;
  };
  const springAlone = load / corner.wheelRateNPerMm;
  const [least, greatest] = corner.kinematics.range;
  if (springAlone >= least && springAlone <= greatest && excess(springAlone) === 0) {
    return succeed(springAlone);
  }
  let low = least;
  let high = Math.min(greatest, springAlone);
  const pastReach = springAlone > greatest && excess(greatest) < 0;
  if (pastReach || springAlone < least || excess(least) > 0) {
    return fail(
      "sagOutOfReach",
      [
        "Under this payload the wheel would move ",
        length(springAlone),
        " up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.",
      ],
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
