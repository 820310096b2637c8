import { layoutAtHeight } from "../../physics/kinematics/index.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import { length, type Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { Platform } from "../pack/pack.ts";
import type { QuickCheckReadings } from "./quickCheckQuestion.ts";

/** A reading that is not believed beside the others, and why. */
export interface DoubtedReading {
  readonly reading: ReadingId;
  readonly sentence: Sentence;
}

type Heights = Pick<QuickCheckReadings, "rideHeight" | "gap">;

/** From the ground a height is more by the wheel's radius, about 280 to 450 mm. Common practice. */
const wheelRadius = [200, 500] as const;

/** A ride height as far above the usual one as a wheel's centre is above the ground. */
export function groundToArch(platform: Platform, { rideHeight }: Heights): DoubtedReading | null {
  if (rideHeight === undefined || platform.rideHeight === undefined) return null;
  const above = meanOf(rideHeight) - meanOf(platform.rideHeight);
  if (above < wheelRadius[0] || above > wheelRadius[1]) return null;
  return {
    reading: "left.rideHeight",
    sentence: [
      "This is ",
      length(above),
      " above the usual height: it looks like ground to fender. Measure from the middle of the wheel to the fender.",
    ],
  };
}

/** Raised by its springs the gap opens; where it did not, the body may have been raised off the frame. */
export function bodyLift(platform: Platform, { rideHeight, gap }: Heights): DoubtedReading | null {
  if (rideHeight === undefined || platform.rideHeight === undefined) return null;
  if (gap === undefined || platform.gap === undefined) return null;
  const raisedMm = meanOf(rideHeight) - meanOf(platform.rideHeight);
  if (raisedMm < 15 + rideHeight.tol + platform.rideHeight.tol) return null;
  const raised = layoutAtHeight(platform.layout, raisedMm, 0);
  if (!raised.ok) return null;
  const opened = meanOf(gap) - meanOf(platform.gap);
  if (opened > 0.3 * raised.value.openedMm) return null;
  return {
    reading: "left.gap",
    sentence: [
      "It stands ",
      length(raisedMm),
      " higher, but the gap is as it was made. Was the body raised off its frame? Then a full check is needed; else measure the gap again.",
    ],
  };
}
