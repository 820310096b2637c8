import * as messages from "../../words/compiled/physics/prescription.ts";
import { gapOf } from "../budget/gap.ts";
import type { Fitment, Side, Stop } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/**
 * The check's fitment with another stop on the same mount, on a rigid spacer of `spacerMm` (0 or more):
 * each gap closes by what the two are taller than the stop it was measured with, and is in doubt by both
 * heights; the stop that is fitted keeps its own gap.
 */
export function withStop(fitment: Fitment, stop: Stop, spacerMm = 0): Fitment {
  const { recordedStop, spacerMm: _, ...rest } = fitment;
  const recorded = recordedStop ?? fitment.stop;
  const spacer = spacerMm === 0 ? {} : { spacerMm };
  return sameBuild(stop, recorded)
    ? { ...rest, stop: recorded, ...spacer }
    : { ...rest, stop, recordedStop: recorded, ...spacer };
}

/** By how much the stop that is asked about is pressed at the measured ride height, worst side first. */
export function pressedSides(fitment: Fitment): readonly { side: Side; pressedMm: number }[] {
  return fitment.corners
    .flatMap((corner) => {
      const gap = gapOf(fitment, corner);
      return gap.ok && gap.value < 0 ? [{ side: corner.side, pressedMm: -gap.value }] : [];
    })
    .sort((one, other) => other.pressedMm - one.pressedMm);
}

/**
 * The same, refused where it must not stand.
 *
 * Error "stopPresses": a stop made for impacts would be pressed with the vehicle standing, which changes
 * the very ride height the readings were taken at.
 */
export function fitmentWithStop(fitment: Fitment, stop: Stop, spacerMm = 0): Outcome<Fitment> {
  const changed = withStop(fitment, stop, spacerMm);
  const [worst] = stop.duty === "carry" ? [] : pressedSides(changed);
  if (worst === undefined) return succeed(changed);
  return fail(
    "stopPresses",
    [messages.onItIsTaller({ side: worst.side, pressedMm: length(worst.pressedMm) })],
    `${worst.side}.gap`,
  );
}

/** Same height, compression, curve and damping: the same stop by whatever name. */
export function sameBuild(one: Stop, other: Stop): boolean {
  const build = (stop: Stop) =>
    JSON.stringify([
      stop.usableCompressionMm,
      stop.duty,
      stop.curve,
      stop.damping,
      stop.testedAtSpeed,
      stop.restLoss ?? 0,
      stop.staticShare ?? 1,
      stop.branches ?? [],
    ]);
  return meanOf(one.freeHeight) === meanOf(other.freeHeight) && build(one) === build(other);
}
