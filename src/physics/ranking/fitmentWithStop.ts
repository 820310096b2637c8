import type { Corner, Fitment, Stop } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/**
 * The check's fitment with another stop on the same mount, on a rigid spacer of `spacerMm` (0 or more):
 * each gap closes by what the two are taller than the stop it was measured with. The ± of both heights
 * joins that of the gap, as root of the sum of squares; the stop that is fitted keeps its own gap.
 *
 * Error "stopPresses": the stop would be pressed with the vehicle standing, which changes the very
 * ride height the readings were taken at.
 */
export function fitmentWithStop(fitment: Fitment, stop: Stop, spacerMm = 0): Outcome<Fitment> {
  const isFitted = sameBuild(stop, fitment.stop);
  const taller =
    spacerMm + (isFitted ? 0 : meanOf(stop.freeHeight) - meanOf(fitment.stop.freeHeight));
  const heightTols = isFitted ? [] : [stop.freeHeight.tol, fitment.stop.freeHeight.tol];
  const corners: Corner[] = [];
  for (const corner of fitment.corners) {
    const gap = {
      values: corner.gap.values.map((value) => value - taller),
      tol: Math.hypot(corner.gap.tol, ...heightTols),
    };
    if (meanOf(gap) < 0) {
      return fail(
        "stopPresses",
        [
          `On the ${corner.side} it is taller than the gap allows: it would be pressed by `,
          length(-meanOf(gap)),
          " with the vehicle standing.",
        ],
        `${corner.side}.gap`,
      );
    }
    corners.push({ ...corner, gap });
  }
  return succeed({ ...fitment, stop: isFitted ? fitment.stop : stop, corners });
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
