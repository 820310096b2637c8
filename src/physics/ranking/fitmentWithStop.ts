import { gapOf } from "../budget/gap.ts";
import type { Fitment, Stop } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/**
 * The check's fitment with another stop on the same mount, on a rigid spacer of `spacerMm` (0 or more):
 * each gap closes by what the two are taller than the stop it was measured with, and is in doubt by both
 * heights; the stop that is fitted keeps its own gap.
 *
 * Error "stopPresses": the stop would be pressed with the vehicle standing, which changes the very
 * ride height the readings were taken at.
 */
export function fitmentWithStop(fitment: Fitment, stop: Stop, spacerMm = 0): Outcome<Fitment> {
  const { recordedStop, spacerMm: _, ...rest } = fitment;
  const recorded = recordedStop ?? fitment.stop;
  const spacer = spacerMm === 0 ? {} : { spacerMm };
  const changed: Fitment = sameBuild(stop, recorded)
    ? { ...rest, stop: recorded, ...spacer }
    : { ...rest, stop, recordedStop: recorded, ...spacer };
  for (const corner of fitment.corners) {
    const gap = gapOf(changed, corner);
    if (!gap.ok) return gap;
    if (gap.value < 0) {
      return fail(
        "stopPresses",
        [
          `On the ${corner.side} it is taller than the gap allows: it would be pressed by `,
          length(-gap.value),
          " with the vehicle standing.",
        ],
        `${corner.side}.gap`,
      );
    }
  }
  return succeed(changed);
}

/** The stop of the check itself, as a pack may hold it: same height, compression, curve and damping. */
function sameBuild(one: Stop, other: Stop): boolean {
  const table = (stop: Stop) =>
    JSON.stringify([stop.usableCompressionMm, stop.duty, stop.curve, stop.damping]);
  return (
    meanOf(one.freeHeight) === meanOf(other.freeHeight) &&
    one.testedAtSpeed === other.testedAtSpeed &&
    table(one) === table(other)
  );
}
