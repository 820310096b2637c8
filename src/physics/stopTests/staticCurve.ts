import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { type StopCurve, stopCurve } from "../stop/stopCurve.ts";
import type { Remark, StaticCurve, StaticPoint } from "./benchTest.ts";
import { isotonicRegression } from "./isotonicRegression.ts";
import { type LevelMean, levelMeans } from "./levelMeans.ts";
import { beyondCurve, residualsFrom } from "./residuals.ts";

/**
 * The static curve of rows taken slowly: means of their levels, made monotone by isotonic regression
 * (weights: rows), a pooled run of levels standing as one point. Where loading and unloading differ at
 * rest too, the mean of both. `settled`: what is made of the means first. Points with force or depth at or below 0 are left to the implied (0, 0).
 *
 * Depth mm and force N with the zeros put right. Errors: "tooFewStaticRows" (none, or not two depths
 * at which the stop pushes).
 */
export function staticCurve(
  depthMm: Float64Array,
  forceN: Float64Array,
  settled: (levels: readonly LevelMean[]) => readonly LevelMean[] = (levels) => levels,
): Outcome<{ readonly curve: StaticCurve; readonly remarks: readonly Remark[] }> {
  if (depthMm.length === 0) return fail("noStaticRows", noStaticRows);
  const means = settled(levelMeans(depthMm, forceN));
  const blocks = isotonicRegression(
    means.map((mean) => mean.forceN),
    means.map((mean) => mean.rows),
  );
  const points: StaticPoint[] = [];
  let pooled = 0;
  for (const block of blocks) {
    const held = means.slice(block.from, block.to + 1);
    const share = (mean: LevelMean) => mean.rows / block.weight;
    const depth = held.reduce((sum, mean) => sum + share(mean) * mean.depthMm, 0);
    if (depth <= 0 || block.value <= 0) continue;
    pooled += held.length - 1;
    points.push({
      depthMm: depth,
      forceN: block.value,
      standardErrorN: Math.hypot(...held.map((mean) => share(mean) * mean.standardErrorN)),
      rows: block.weight,
    });
  }
  const curve = points.length < 2 ? null : curveThrough(points);
  if (curve === null) {
    return fail("tooFewStaticRows", [messages.staticRowsPushAt]);
  }
  return succeed({
    curve: {
      points,
      residuals: residualsFrom(depthMm, beyondCurve(depthMm, forceN, curve)),
      rows: depthMm.length,
    },
    remarks: pooled === 0 ? [] : [madeMonotone(pooled)],
  });
}

/** Why there is no curve where every row is at speed. */
const noStaticRows = [messages.noRowOfThis];

function madeMonotone(levels: number): Remark {
  return {
    code: "madeMonotone",
    sentence: [
      messages.atDepthMeanForce({
        levels: { kind: "count", value: levels },
        levels2: levels,
      }),
    ],
  };
}

/** The curve through the points as the answer uses it: PCHIP, straight on past the last one. */
export function curveThrough(points: readonly StaticPoint[]): StopCurve | null {
  const last = points.at(-1)?.depthMm ?? 0;
  const curve = stopCurve({
    name: "",
    duty: "impact",
    freeHeight: { values: [20 * last], tol: 0 },
    usableCompressionMm: 10 * last,
    curve: points.map(({ depthMm, forceN }) => [depthMm, forceN] as const),
    damping: null,
    testedAtSpeed: false,
  });
  return curve.ok ? curve.value : null;
}

/** Standard error of the static force at a depth, N: that of the nearest point. */
export function staticErrorAt(points: readonly StaticPoint[], depthMm: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  let error = 0;
  for (const point of points) {
    const away = Math.abs(point.depthMm - depthMm);
    if (away < nearest) {
      nearest = away;
      error = point.standardErrorN;
    }
  }
  return error;
}
