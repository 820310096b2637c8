import { RandomSource } from "../uncertainty/randomSource.ts";
import { mean } from "../uncertainty/readingMean.ts";
import { type FitShape, fittedLaw } from "./partsKept.ts";
import type { UnitGram } from "./unitGrams.ts";

/** Draws of the doubt; each a fit of its own. */
const draws = 200;
/**
 * How far force and depth may be apart in time, s, one standard deviation. Common practice. It is not found
 * from the test: a late force is that of less damping but for some 0.02 % of the greatest force, which no
 * load cell shows (`informationBound.test.ts`), so that it stands in the ± of every part.
 */
const channelDelayS = 0.0003;
/** Doubt of a zero from block to block where the residuals show less, as a share of greatest force. */
const zeroShare = 0.001;
/** … and of the depth, mm, one standard deviation. */
const depthZeroMm = 0.02;

/** Columns of the grams that the doubt turns the force by. */
export interface DoubtColumns {
  /** dF/dt. */
  readonly rate: number;
  readonly one: number;
  /** Time, −1 … 1 over the test. */
  readonly time: number;
  /** F∞′. */
  readonly slope: number;
}

/**
 * Laws as they would have come out of other cycles of the same test: cycles of a block stand for each
 * other (drawn with replacement, one fewer than there are, the block bootstrap's unbiased form), and with
 * each draw the force is late or early against the depth, the zeros of force and depth are off by block,
 * and the zero of force drifts. Sources: Efron & Tibshirani, An Introduction to the Bootstrap, ch. 6 to 8
 * (from memory); the sizes of delay and zeros are common practice.
 */
export function drawnLaws(
  units: readonly UnitGram[],
  shape: FitShape,
  doubt: DoubtColumns,
  allowed: Uint8Array,
  best: Float64Array,
  greatestForceN: number,
): readonly Float64Array[] {
  const source = RandomSource.stream(1, "stop test");
  const strata = new Map<number, UnitGram[]>();
  const fixed: UnitGram[] = [];
  for (const unit of units) {
    if (unit.stratum === null) fixed.push(unit);
    else strata.set(unit.stratum, [...(strata.get(unit.stratum) ?? []), unit]);
  }
  const zeroN = Math.max(zeroShare * greatestForceN, zeroSpread(units, shape, doubt, best));
  const { size, n, force } = shape;
  return Array.from({ length: draws }, () => {
    const sum = new Float64Array(size * size);
    const delay = channelDelayS * source.nextNormal();
    const drift = zeroN * source.nextNormal();
    const add = (unit: UnitGram, weight: number, zero: number, depth: number) => {
      const { products } = unit;
      for (let at = 0; at < sum.length; at++) {
        sum[at] = sum[at] + weight * products[at];
      }
      for (let i = 0; i < n; i++) {
        const row = i * size;
        const turned =
          delay * products[row + doubt.rate] +
          zero * products[row + doubt.one] +
          drift * products[row + doubt.time] +
          depth * products[row + doubt.slope];
        sum[row + force] = sum[row + force] + weight * turned;
      }
    };
    for (const unit of fixed) add(unit, 1, 0, 0);
    for (const cycles of strata.values()) {
      const zero = zeroN * source.nextNormal();
      const depth = depthZeroMm * source.nextNormal();
      const taken = Math.max(1, cycles.length - 1);
      const weight = cycles.length / taken;
      for (let draw = 0; draw < taken; draw++) {
        const place = Math.min(cycles.length - 1, Math.floor(source.nextUniform() * cycles.length));
        add(cycles[place], weight, zero, depth);
      }
    }
    return fittedLaw(sum, shape, allowed);
  });
}

/** Spread of the mean residual from cycle to cycle, N: what drift and lost zeros leave. */
function zeroSpread(
  units: readonly UnitGram[],
  { size, n, force }: FitShape,
  { one }: DoubtColumns,
  law: Float64Array,
): number {
  const means = units
    .filter(({ stratum }) => stratum !== null)
    .map(({ products }) => {
      let sum = products[force * size + one];
      for (let i = 0; i < n; i++) sum -= law[i] * products[i * size + one];
      return sum / products[one * size + one];
    });
  return Math.sqrt(means.reduce((sum, mean) => sum + mean * mean, 0) / Math.max(1, means.length));
}

/** ± of a value, 95 %, from its draws; wider where few cycles stand for each other. */
export function halfWidth(
  values: readonly number[],
  best: number,
  degreesOfFreedom: number,
): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))];
  const middle = mean(sorted);
  const variance = mean(sorted.map((value) => (value - middle) ** 2));
  const half = Math.max(at(0.975) - best, best - at(0.025), 1.96 * Math.sqrt(variance));
  return half * fewCycles(degreesOfFreedom);
}

/** Student's t over the normal's 1.96, within 2 % from three degrees on. */
export function fewCycles(degreesOfFreedom: number): number {
  const degrees = Math.max(1, degreesOfFreedom);
  return 1 + 1.35 / degrees + 2.5 / degrees ** 3;
}
