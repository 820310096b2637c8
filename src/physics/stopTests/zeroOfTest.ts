import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { mean } from "../uncertainty/readingMean.ts";
import type { Remark } from "./benchTest.ts";
import type { LevelMean } from "./levelMeans.ts";
import { nonNegativeLeastSquares } from "./nonNegativeLeastSquares.ts";

/** What to take off every depth, mm, and every force, N, so that (0, 0) is the first touch. */
export interface ZeroOfTest {
  readonly depthMm: number;
  readonly forceN: number;
  readonly remarks: readonly Remark[];
}

/** A run of levels counts as free of the stop where it spans this share of all depths. */
const freeShare = 0.2;
/** … and its forces stay within this share of the whole span of force. */
const flatShare = 0.001;
/** An offset below this share of its span is left alone. */
const noticeableShare = 0.005;
/** Depths below 0 by less than this share of the span are 0 but for rounding. */
const roundingShare = 1e-6;
/** A test that begins this far from depth 0, in shares of its span, has no depth of its own. */
const farShare = 0.3;

/**
 * Zeros of a test from the means of its static levels, by rising depth, force positive as the stop
 * pushes. A flat beginning is the approach before the stop is touched: its force is the load cell's
 * zero and its end the depth's, unless the file's own 0 lies in it and the force creeps up from there, as
 * a very progressive stop's does. Without one, a force at depth 0 is the load cell's zero; depths that
 * begin far from 0 at almost no force are positions, taken from their first. What may be an offset and
 * cannot be told from the stop itself stays, and is a remark. Common practice, no source.
 *
 * Error "depthNotTold": depths below 0 at which the stop already pushes.
 */
export function zeroOfTest(levels: readonly LevelMean[]): Outcome<ZeroOfTest> {
  if (levels.length < 3) return succeed({ depthMm: 0, forceN: 0, remarks: [] });
  const first = levels[0] as LevelMean;
  const last = levels.at(-1) as LevelMean;
  const depthSpan = last.depthMm - first.depthMm;
  const forces = levels.map(({ forceN }) => forceN);
  const forceSpan = Math.max(...forces) - Math.min(...forces);
  const noiseN = levels.some(({ standardErrorN }) => standardErrorN > 0) ? levelNoise(forces) : 0;
  const free = freeLevels(levels, forceSpan, noiseN);
  if (isApproach(free, depthSpan)) {
    const end = free.at(-1) as LevelMean;
    const zero = mean(free.map(({ forceN }) => forceN));
    const forceN = Math.abs(zero) > noticeableShare * forceSpan ? zero : 0;
    const isNoisy = noisyWidths * noiseN > flatShare * forceSpan;
    const touch = isNoisy
      ? touchByFit(levels, forceSpan, zero)
      : touchDepth(levels, free.length, zero);
    const away = Math.abs(touch) > 0.02 * depthSpan;
    const holdsZero = first.depthMm <= 0.02 * depthSpan && end.depthMm >= -0.02 * depthSpan;
    if (away && holdsZero && !risesAtOnce(levels, touch, zero, forceSpan)) {
      const left = zeros(0, forceN);
      return succeed({ ...left, remarks: [...left.remarks, softStart(touch)] });
    }
    return succeed(zeros(away ? touch : 0, forceN));
  }
  if (Math.abs(first.depthMm) <= 0.02 * depthSpan) {
    const next = levels[1] as LevelMean;
    const rate = (next.forceN - first.forceN) / (next.depthMm - first.depthMm);
    const zero = first.forceN - rate * first.depthMm;
    return succeed(zeros(0, Math.abs(zero) > 0.01 * forceSpan ? zero : 0));
  }
  const almostFree = Math.abs(first.forceN) <= 0.03 * forceSpan;
  if (almostFree && (first.depthMm < 0 || first.depthMm > farShare * last.depthMm)) {
    return succeed(zeros(first.depthMm, 0));
  }
  if (first.depthMm < -roundingShare * depthSpan) {
    return fail("depthNotTold", [messages.stopAlreadyPushesAt]);
  }
  return succeed({ depthMm: 0, forceN: 0, remarks: maybeOffset(levels, free, forceSpan) });
}

/** Fewer levels than this do not tell scatter from a bend. */
const fewestNoisy = 20;
/** Levels that only scatter lie within so many of its standard deviations of each other. */
const noisyWidths = 4;

/** A force at depth 0 from this share of the span on is worth a word. */
const wordShare = 0.02;

/** What looks like an offset of depth or force, in a test that does not begin before the first touch. */
function maybeOffset(
  levels: readonly LevelMean[],
  free: readonly LevelMean[],
  forceSpan: number,
): readonly Remark[] {
  const [first, second] = levels as readonly [LevelMean, LevelMean];
  const end = free.at(-1) as LevelMean;
  if (free.length >= 3 && risesAtOnce(levels, end.depthMm, end.forceN, forceSpan)) {
    return [softStart(end.depthMm)];
  }
  const rate = (second.forceN - first.forceN) / (second.depthMm - first.depthMm);
  const atZero = first.forceN - rate * first.depthMm;
  const doubt = 4 * Math.max(first.standardErrorN, second.standardErrorN);
  return atZero > Math.max(wordShare * forceSpan, doubt) ? [zeroNotTold(atZero)] : [];
}

/** Scatter of level means, N, from level to level: by the median of their third differences. */
function levelNoise(forces: readonly number[]): number {
  if (forces.length < fewestNoisy) return 0;
  const differences: number[] = [];
  for (let place = 3; place < forces.length; place++) {
    const at = (back: number) => forces[place - back];
    differences.push(Math.abs(at(0) - 3 * at(1) + 3 * at(2) - at(3)));
  }
  differences.sort((a, b) => a - b);
  // Median of |N(0, √20·σ)| is 0.6745·√20·σ.
  return (differences[differences.length >> 1] ?? 0) / (0.6745 * Math.sqrt(20));
}

/** The longest beginning whose forces stay flat within their own doubt and scatter. */
function freeLevels(
  levels: readonly LevelMean[],
  forceSpan: number,
  noiseN: number,
): readonly LevelMean[] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let doubt = 0;
  for (const [place, level] of levels.entries()) {
    least = Math.min(least, level.forceN);
    most = Math.max(most, level.forceN);
    doubt = Math.max(doubt, level.standardErrorN);
    const scatter = Math.max(noisyWidths * noiseN, 4 * doubt);
    if (most - least > Math.max(flatShare * forceSpan, scatter)) return levels.slice(0, place);
  }
  return levels;
}

function isApproach(free: readonly LevelMean[], depthSpan: number): boolean {
  const from = (free[0] as LevelMean).depthMm;
  const to = (free.at(-1) as LevelMean).depthMm;
  return free.length >= 2 && (to - from >= freeShare * depthSpan || to <= 0.02 * depthSpan);
}

/** Where the force leaves its zero: the next levels' straight line down to it, within one level. */
function touchDepth(levels: readonly LevelMean[], freeCount: number, zero: number): number {
  const end = levels[freeCount - 1] as LevelMean;
  const after = levels[freeCount + 1];
  if (after === undefined) return end.depthMm;
  const next = levels[freeCount] as LevelMean;
  const rate = (after.forceN - next.forceN) / (after.depthMm - next.depthMm);
  const meets = next.depthMm - (next.forceN - zero) / rate;
  return Math.min(next.depthMm, Math.max(end.depthMm, meets));
}

/** Levels up to this share of the greatest force tell where a noisy test is first touched. */
const touchShare = 0.25;
const touchPlaces = 200;

/**
 * Where the force of a noisy test leaves its zero: the depth t with the least squares of
 * zero + k·(x − t) + q·(x − t)², x beyond t, k and q at 0 or above, over the lower levels.
 */
function touchByFit(levels: readonly LevelMean[], forceSpan: number, zero: number): number {
  const high = levels.findIndex(({ forceN }) => forceN - zero > touchShare * forceSpan);
  const lower = levels.slice(0, high < 0 ? levels.length : high + 1);
  const from = (lower[0] as LevelMean).depthMm;
  const to = (lower.at(-1) as LevelMean).depthMm;
  let best = { touch: from, misfit: Number.POSITIVE_INFINITY };
  for (let place = 0; place < touchPlaces; place++) {
    const touch = from + (place / touchPlaces) * (to - from);
    const misfit = touchMisfit(lower, touch, zero);
    if (misfit < best.misfit) best = { touch, misfit };
  }
  return best.touch;
}

function touchMisfit(levels: readonly LevelMean[], touch: number, zero: number): number {
  const gram = new Float64Array(4);
  const right = new Float64Array(2);
  let squares = 0;
  for (const { depthMm, forceN } of levels) {
    const x = Math.max(0, depthMm - touch);
    const force = forceN - zero;
    squares += force * force;
    gram[0] = gram[0] + x ** 2;
    gram[1] = gram[1] + x ** 3;
    gram[3] = gram[3] + x ** 4;
    right[0] = right[0] + x * force;
    right[1] = right[1] + x * x * force;
  }
  gram[2] = gram[1];
  const [k = 0, q = 0] = nonNegativeLeastSquares(gram, right);
  const cross = 2 * k * q * gram[1];
  const fitted = k * k * gram[0] + cross + q * q * gram[3];
  return squares - 2 * (k * right[0] + q * right[1]) + fitted;
}

/**
 * Does the force rise at once from there, as a stop's that is touched late, or creep up, as a very
 * progressive stop's that was touched at the file's own 0? By its force a little deeper.
 */
function risesAtOnce(
  levels: readonly LevelMean[],
  touch: number,
  zero: number,
  forceSpan: number,
): boolean {
  const deepest = (levels.at(-1) as LevelMean).depthMm;
  const alittle = touch + 0.15 * (deepest - touch);
  const level = levels.find(({ depthMm }) => depthMm >= alittle) as LevelMean;
  return level.forceN - zero >= 0.03 * forceSpan;
}

function softStart(depthMm: number): Remark {
  return {
    code: "softStart",
    sentence: [messages.upToThereIs({ depthMm: length(depthMm) })],
  };
}

function zeroNotTold(forceN: number): Remark {
  return {
    code: "zeroNotTold",
    sentence: [
      messages.carriedOnInStraight({
        forceN: { kind: "force", value: forceN },
      }),
    ],
  };
}

function zeros(depthMm: number, forceN: number): ZeroOfTest {
  const remarks: Remark[] = [];
  if (forceN !== 0) {
    remarks.push({
      code: "forceZero",
      sentence: [messages.freeOfLoadFile({ forceN: { kind: "force", value: forceN } })],
    });
  }
  if (depthMm !== 0) {
    remarks.push({
      code: "depthZero",
      sentence: [messages.stopIsFirstTouched({ depthMm: length(depthMm) })],
    });
  }
  return { depthMm, forceN, remarks };
}
