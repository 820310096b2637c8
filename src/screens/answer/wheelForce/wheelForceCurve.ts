import { cornerAtMeans, gapOf } from "../../../physics/budget/index.ts";
import type { Corner, CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { type Outcome, succeed } from "../../../physics/outcome.ts";
import { stopCurve } from "../../../physics/stop/index.ts";

/** Force at the wheel above what it carries at ride, N, over wheel travel from there, mm. */
export interface WheelForcePoint {
  readonly travelMm: number;
  /** Null where the ride spring's rate is not known. */
  readonly springN: number | null;
  readonly stopN: number;
}

export interface WheelForceCurve {
  readonly points: readonly WheelForcePoint[];
  readonly contactMm: number;
  readonly fullStopMm: number;
  readonly hardLimitMm: number | null;
  /** Where the travel ends: full stop or hard limit, whichever comes first. */
  readonly endMm: number;
  /** Taken up from ride to the end of the travel, J. */
  readonly springJ: number | null;
  readonly stopJ: number;
}

const pieces = 120;

/** Static: pressed slowly, the stop's force turned into wheel force by the lever at each travel. */
export function wheelForceCurve(
  fitment: Fitment,
  corner: Corner,
  assessed: CornerAssessment,
): Outcome<WheelForceCurve> {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return atMeans;
  const { kinematics } = atMeans.value;
  const stop = stopCurve(fitment.stop);
  if (!stop.ok) return stop;
  const standing = gapOf(fitment, corner);
  if (!standing.ok) return standing;
  const gap = standing.value;
  const rate = fitment.ride?.wheelRateNPerMm ?? null;
  const hardLimitMm = assessed.wheelTravelToHardLimitMm;
  const fullStopMm = assessed.wheelTravelToFullStopMm;
  const last = Math.min(Math.max(fullStopMm, hardLimitMm ?? 0) * 1.04, kinematics.range[1]);
  const closing = new Float64Array(3);
  const at = (travelMm: number): WheelForcePoint => {
    kinematics.evaluate(travelMm, closing);
    return {
      travelMm,
      springN: rate === null ? null : rate * travelMm,
      stopN: stop.value.force((closing[0] ?? 0) - gap) * (closing[1] ?? 0),
    };
  };
  const travels = Array.from({ length: pieces + 1 }, (_, i) => (last * i) / pieces);
  const knees = [assessed.wheelTravelToContactMm, fullStopMm].filter((z) => z > 0 && z < last);
  const endMm = Math.min(fullStopMm, hardLimitMm ?? fullStopMm);
  kinematics.evaluate(endMm, closing);
  const stopJ = stop.value.energy((closing[0] ?? 0) - gap) / 1000;
  return succeed({
    points: [...travels, ...knees].sort((a, b) => a - b).map(at),
    contactMm: assessed.wheelTravelToContactMm,
    fullStopMm,
    hardLimitMm,
    endMm,
    springJ: rate === null ? null : (rate * endMm * endMm) / 2000,
    stopJ,
  });
}

/** Spring and stop together, or the stop alone where the spring is not known. */
export function totalForce({ springN, stopN }: WheelForcePoint): number {
  return (springN ?? 0) + stopN;
}
