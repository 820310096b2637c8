import type { CurvePoint, Stop } from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { secantRate } from "./stiffnessClass.ts";
import { stopCurve } from "./stopCurve.ts";

/** A stop has done its work where its rate is so many times its secant rate. Common practice. */
const bottomedRateFactor = 10;

/** Places between two points of a test at which its rate is looked at. */
const looks = 64;
const halvings = 40;

/**
 * Usable compression δu, mm, of a stop of which only a static test is known: the least compression at
 * which the rate of its curve reaches ten times the secant rate at half the tested depth, or the deepest
 * tested point. Common practice; what the maker says goes before it.
 *
 * Errors: those of `stopCurve`.
 */
export function usableFromTest(curve: readonly CurvePoint[]): Outcome<number> {
  const last = curve.at(-1)?.[0] ?? 0;
  const tested = stopCurve({ ...untestedStop, curve, usableCompressionMm: Math.max(last, 1e-9) });
  if (!tested.ok) return tested;
  const bottomed = bottomedRateFactor * secantRate(tested.value);
  const isReached = (x: number) => tested.value.slope(x) >= bottomed;
  let before = 0;
  for (const [depth] of curve) {
    for (let look = 1; look <= looks; look++) {
      const x = look === looks ? depth : before + ((depth - before) * look) / looks;
      if (isReached(x)) {
        return succeed(
          firstReached(isReached, before + ((depth - before) * (look - 1)) / looks, x),
        );
      }
    }
    before = depth;
  }
  return succeed(last);
}

function firstReached(isReached: (x: number) => boolean, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let halving = 0; halving < halvings; halving++) {
    const middle = (low + high) / 2;
    if (isReached(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const untestedStop: Omit<Stop, "curve" | "usableCompressionMm"> = {
  name: "",
  duty: "impact",
  freeHeight: { values: [Number.MAX_VALUE], tol: 0 },
  damping: null,
  testedAtSpeed: false,
};
