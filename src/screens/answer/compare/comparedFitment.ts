import type { Corner, Fitment, Reading, Stop } from "../../../physics/fitment.ts";
import { fail, type Outcome, succeed } from "../../../physics/outcome.ts";
import { length } from "../../../physics/sentence.ts";
import { meanOf } from "../../../physics/uncertainty/readingMean.ts";

/**
 * The same vehicle with another stop on the same mount: the gap closes by what the other stop is
 * taller. The doubt of both heights joins that of the gap, so that its rectangular ± is the root of
 * the squares of the three.
 *
 * Error: "compared-stop-presses" where the other stop is taller than the gap lets it be.
 */
export function comparedFitment(fitment: Fitment, stop: Stop): Outcome<Fitment> {
  const taller = meanOf(stop.freeHeight) - meanOf(fitment.stop.freeHeight);
  const corners: Corner[] = [];
  for (const corner of fitment.corners) {
    const gap = shiftedGap(corner.gap, taller, [stop.freeHeight.tol, fitment.stop.freeHeight.tol]);
    if (meanOf(gap) < 0) {
      return fail(
        "compared-stop-presses",
        [
          `On the ${corner.side} this stop is taller than the gap allows: it would be pressed in by `,
          length(-meanOf(gap)),
          " with the vehicle standing. It cannot be compared by these readings.",
        ],
        `${corner.side}.gap`,
      );
    }
    corners.push({ ...corner, gap });
  }
  return succeed({ ...fitment, stop, corners });
}

/** A gap that something of that height closes; the doubts of heights join its own. */
export function shiftedGap(
  { values, tol }: Reading,
  by: number,
  others: readonly number[],
): Reading {
  return {
    values: values.map((value) => value - by),
    tol: Math.hypot(tol, ...others),
  };
}

/**
 * A taller stop of the same build and stiffness class: every height and compression grows in one
 * proportion, and the force with it, so that force over compression at half the usable compression
 * stays. What is not known by test at the new height is damping: none.
 */
export function tallerStop(stop: Stop, byMm: number): Stop {
  const height = meanOf(stop.freeHeight);
  const growth = (height + byMm) / height;
  return {
    ...stop,
    name: `${stop.name}, ${byMm >= 0 ? "taller" : "shorter"}`,
    freeHeight: { values: [height + byMm], tol: stop.freeHeight.tol },
    usableCompressionMm: growth * stop.usableCompressionMm,
    curve: stop.curve.map(([depth, force]) => [growth * depth, growth * force] as const),
    damping: null,
    testedAtSpeed: false,
  };
}
