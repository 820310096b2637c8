import type { LevelMean } from "./levelMeans.ts";

/** Penalties tried, as powers of ten of the span's own scale. */
const powers = Array.from({ length: 21 }, (_, at) => -8 + at / 2);
const fewestLevels = 8;
const countedAs = 1.4;
/** Scatter below this share of the greatest force counts alike. */
const leastErrorShare = 1e-4;

/**
 * The means of a ramp's levels with the noise between neighbours taken out: least squares of their forces,
 * each weighted by its scatter where that is wide, with a penalty on the second derivative. It is as heavy as
 * foretells a level left out best, each value counted 1.4 times so that noise is not followed. mm, N. Sources:
 * Whittaker 1923; Craven & Wahba, Numer. Math. 31 (1979) 377; Kim & Gu, J. R. Stat. Soc. B 66 (2004) 337
 * (from memory).
 */
export function smoothedLevels(levels: readonly LevelMean[]): readonly LevelMean[] {
  const n = levels.length;
  if (n < fewestLevels) return levels;
  const depths = levels.map(({ depthMm }) => depthMm);
  const errors = levels.map(({ standardErrorN }) => standardErrorN).sort((a, b) => a - b);
  const greatest = levels.reduce((most, { forceN }) => Math.max(most, Math.abs(forceN)), 0);
  const usual = Math.max(errors[n >> 1], leastErrorShare * greatest);
  const weights = levels.map(({ standardErrorN }) =>
    standardErrorN > usual ? (usual / standardErrorN) ** 2 : 1,
  );
  const span = depths[n - 1] - depths[0];
  let best: Float64Array | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const power of powers) {
    const factors = factored(penalised(depths, weights, span ** 3 * 10 ** power));
    const smooth = solved(
      factors,
      Float64Array.from(levels, ({ forceN }, at) => weights[at] * forceN),
    );
    let trace = 0;
    for (let at = 0; at < n; at++) {
      const unit = new Float64Array(n);
      unit[at] = weights[at];
      trace += solved(factors, unit)[at];
    }
    const left = 1 - (countedAs * trace) / n;
    if (left <= 0) continue;
    const misfit = levels.reduce(
      (sum, { forceN }, at) => sum + weights[at] * (forceN - smooth[at]) ** 2,
      0,
    );
    const score = misfit / left ** 2;
    if (score < least) {
      least = score;
      best = smooth;
    }
  }
  const found = best;
  return found === null ? levels : levels.map((level, at) => ({ ...level, forceN: found[at] }));
}

/** W + λ·∫z″² by second divided differences: the diagonal and the two bands beside it. */
function penalised(x: readonly number[], weight: readonly number[], lambda: number): Bands {
  const n = x.length;
  const bands = [Float64Array.from(weight), new Float64Array(n), new Float64Array(n)] as const;
  for (let at = 1; at < n - 1; at++) {
    const before = x[at] - x[at - 1];
    const after = x[at + 1] - x[at];
    const about = (before + after) / 2;
    const parts = [1 / before / about, -(1 / before + 1 / after) / about, 1 / after / about];
    for (let i = 0; i < 3; i++) {
      for (let j = i; j < 3; j++) {
        const band = bands[(j - i) as 0 | 1 | 2];
        band[at - 1 + i] = band[at - 1 + i] + lambda * about * parts[i] * parts[j];
      }
    }
  }
  return bands;
}

type Bands = readonly [Float64Array, Float64Array, Float64Array];

/** L·D·Lᵀ of a positive definite matrix of two bands beside its diagonal. */
function factored([diagonal, first, second]: Bands): Bands {
  const n = diagonal.length;
  const d = diagonal.slice();
  const l1 = first.slice();
  const l2 = second.slice();
  for (let at = 0; at < n; at++) {
    if (at > 0) {
      d[at] = d[at] - l1[at - 1] ** 2 * d[at - 1];
      if (at > 1) d[at] = d[at] - l2[at - 2] ** 2 * d[at - 2];
    }
    if (at > 0) l1[at] = l1[at] - l1[at - 1] * l2[at - 1] * d[at - 1];
    l1[at] = l1[at] / d[at];
    l2[at] = l2[at] / d[at];
  }
  return [d, l1, l2];
}

function solved([d, l1, l2]: Bands, right: Float64Array): Float64Array {
  const n = right.length;
  const x = right.slice();
  for (let at = 0; at < n; at++) {
    if (at > 0) x[at] = x[at] - l1[at - 1] * x[at - 1];
    if (at > 1) x[at] = x[at] - l2[at - 2] * x[at - 2];
  }
  for (let at = n - 1; at >= 0; at--) {
    x[at] = x[at] / d[at];
    if (at < n - 1) x[at] = x[at] - l1[at] * x[at + 1];
    if (at < n - 2) x[at] = x[at] - l2[at] * x[at + 2];
  }
  return x;
}
