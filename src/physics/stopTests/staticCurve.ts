import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { type StopCurve, stopCurve } from "../stop/stopCurve.ts";
import type { Remark, StaticCurve, StaticPoint } from "./benchTest.ts";
import { depthLevels } from "./depthLevels.ts";
import { isotonicRegression } from "./isotonicRegression.ts";
import { type Residuals, residualsFrom } from "./residuals.ts";

/** Mean depth and force of the rows of one level, with the doubt of the force there. */
export interface LevelMean {
  readonly depthMm: number;
  readonly forceN: number;
  /** N: scatter about the level's own straight line, over √rows; 0 where too few rows tell. */
  readonly standardErrorN: number;
  readonly rows: number;
}

/** The levels of the rows by rising depth. mm, N; finite, of one length, at least one row. */
export function levelMeans(depthMm: Float64Array, forceN: Float64Array): readonly LevelMean[] {
  const levels = depthLevels(depthMm);
  const sums = Array.from({ length: levels.count }, () => new LineSums());
  for (let row = 0; row < depthMm.length; row++) {
    const depth = depthMm[row] as number;
    (sums[levels.levelOf(depth)] as LineSums).add(depth, forceN[row] as number);
  }
  return sums.filter(({ rows }) => rows > 0).map((sum) => sum.mean());
}

/** Running sums of a straight line through the rows of one level (Welford's updates). */
class LineSums {
  rows = 0;
  #depth = 0;
  #force = 0;
  #depthSquares = 0;
  #forceSquares = 0;
  #products = 0;

  add(depth: number, force: number): void {
    this.rows++;
    const fromDepth = depth - this.#depth;
    const fromForce = force - this.#force;
    this.#depth += fromDepth / this.rows;
    this.#force += fromForce / this.rows;
    this.#depthSquares += fromDepth * (depth - this.#depth);
    this.#forceSquares += fromForce * (force - this.#force);
    this.#products += fromDepth * (force - this.#force);
  }

  mean(): LevelMean {
    const explained = this.#depthSquares > 0 ? this.#products ** 2 / this.#depthSquares : 0;
    const free = this.rows - (this.#depthSquares > 0 ? 2 : 1);
    const scatter = free > 0 ? Math.max(0, this.#forceSquares - explained) / free : 0;
    return {
      depthMm: this.#depth,
      forceN: this.#force,
      standardErrorN: Math.sqrt(scatter / this.rows),
      rows: this.rows,
    };
  }
}

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
    curve: { points, residuals: residualsOf(depthMm, forceN, curve), rows: depthMm.length },
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

function residualsOf(depthMm: Float64Array, forceN: Float64Array, curve: StopCurve): Residuals {
  return residualsFrom(
    depthMm,
    forceN.map((force, row) => force - curve.force(depthMm[row] as number)),
  );
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
