import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { HardLimitPlace } from "../budget/hardLimit.ts";
import type { Corner, Fitment, Interval, Linkage } from "../fitment.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import type { TravelPose } from "../layouts/pose.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { TravelPoses } from "./travelPose.ts";

/** What a corner shows at one wheel travel from the measured ride height, jounce positive. */
export interface TravelMoment {
  /** mm, within reach. */
  readonly travelMm: number;
  /** By how much the stop's gap has closed, mm. */
  readonly closingMm: number;
  /** What is left of the gap, mm; 0 once the stop touches. */
  readonly gapMm: number;
  /** By how much the stop is pressed, mm; 0 before it touches. */
  readonly compressionMm: number;
  /** The stop's own height, mm. */
  readonly stopHeightMm: number;
  /** Pressed slowly, along its axis, N. */
  readonly stopForceN: number;
  /** R = dz/ds, wheel per stop. */
  readonly leverRatio: number;
  readonly pose: TravelPose;
}

/** One corner at its mean readings, to be moved through its travel. */
export interface CornerTravel {
  readonly linkage: Linkage;
  /** Wheel travel that the layout can reach, mm. */
  readonly range: Interval;
  readonly freeHeightMm: number;
  readonly spacerMm: number;
  /** δu: where the stop has done its work, mm of compression, and its slow force there, N. */
  readonly usableCompressionMm: number;
  readonly fullForceN: number;
  /** From the stop's seat to its pad at ride, along its axis, mm. */
  readonly seatToPadMm: number;
  readonly limits: readonly HardLimitPlace[];
  /** A travel out of reach is taken to the end of it. */
  at(travelMm: number): TravelMoment;
}

/**
 * A corner moved through its travel by the motion that the answer is computed from: s(z) and R led through
 * contacts found by hand, the arm's turn from the layout's own motion at the same closing, the stop's height
 * and slow force from its static curve. All mm and N, at the mean readings.
 *
 * Errors: those of `cornerAtMeans` and `stopCurve`.
 */
export function cornerTravel(fitment: Fitment, corner: Corner): Outcome<CornerTravel> {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return atMeans;
  const curve = stopCurve(fitment.stop);
  if (!curve.ok) return curve;
  const { kinematics, motion, gapMm, linkage } = atMeans.value;
  const freeHeightMm = meanOf(fitment.stop.freeHeight);
  const spacerMm = fitment.spacerMm ?? 0;
  const seatToPadMm = gapMm + freeHeightMm + spacerMm;
  const poses = new TravelPoses(fitment.layout, atMeans.value, seatToPadMm);
  const [least, greatest] = kinematics.range;
  return succeed({
    linkage,
    range: kinematics.range,
    freeHeightMm,
    spacerMm,
    usableCompressionMm: curve.value.usableCompressionMm,
    fullForceN: curve.value.force(curve.value.usableCompressionMm),
    seatToPadMm,
    limits: atMeans.value.limitPlaces(),
    at: (wanted) => {
      const travelMm = Math.min(Math.max(wanted, least), greatest);
      const { closingMm, perMm } = closingAt(kinematics, travelMm);
      const compressionMm = Math.max(0, closingMm - gapMm);
      const modelled = motion.wheelTravel(closingMm);
      const standing = motion.standAt(Number.isNaN(modelled) ? travelMm : modelled);
      return {
        travelMm,
        closingMm,
        gapMm: Math.max(0, gapMm - closingMm),
        compressionMm,
        stopHeightMm: freeHeightMm - compressionMm,
        stopForceN: curve.value.force(compressionMm),
        leverRatio: 1 / perMm,
        pose: poses.at(travelMm, closingMm, standing),
      };
    },
  });
}
