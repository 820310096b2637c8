import { mean } from "../uncertainty/readingMean.ts";
import { nonNegativeLeastSquares } from "./nonNegativeLeastSquares.ts";
import { normalEquations, squaredMisfit, summedGrams, type UnitGram } from "./unitGrams.ts";

/** A part of the law: the columns that it stands on. */
export interface LawPart {
  readonly name: "rest" | "dashpot" | "branches";
  readonly columns: readonly number[];
}

/** Columns 0 … n − 1 are fitted; `force` is the column of the measured force, in grams of `size`. */
export interface FitShape {
  readonly size: number;
  readonly n: number;
  readonly force: number;
}

const mostFolds = 5;
/** A part stays where leaving it out makes unseen cycles worse by this many standard errors … */
const standardErrors = 2;
/** … and by this share of what is left of their force, squared. */
const leastGain = 0.01;
/**
 * The static share alone held at no more than 1: what remains at rest is a share of what the ramp bore.
 * Returns the parts' values, n of them.
 */
export function fittedLaw(
  sum: Float64Array,
  { size, n, force }: FitShape,
  allowed: Uint8Array,
): Float64Array {
  const { gram, right } = normalEquations(sum, size, n, force);
  const found = nonNegativeLeastSquares(gram, right, allowed);
  if (found[0] <= 1) return found;
  const rest = allowed.slice();
  rest[0] = 0;
  for (let i = 0; i < n; i++) right[i] = right[i] - gram[i * n];
  const others = nonNegativeLeastSquares(gram, right, rest);
  others[0] = 1;
  return others;
}

/**
 * Which parts of the law the test shows, by held-out cycles: the cycles are dealt into at most five
 * hands, each is foretold from the others, and from all parts the one that unseen cycles miss least is
 * left out as long as they hardly miss it. Returns 1 for the columns that stay. Source: cross-validation
 * with backward elimination, Hastie, Tibshirani & Friedman, Elements of Statistical Learning, ch. 7
 * (from memory); the thresholds are common practice.
 */
export function partsKept(
  units: readonly UnitGram[],
  shape: FitShape,
  parts: readonly LawPart[],
): Uint8Array {
  const fold = foldsOf(units);
  const folds = 1 + Math.max(...fold);
  const training = Array.from({ length: folds }, (_, index) =>
    summedGrams(
      units.filter((_, place) => folds === 1 || fold[place] !== index),
      shape.size,
    ),
  );
  const misfits = (kept: readonly LawPart[]): Float64Array => {
    const allowed = allowedColumns(kept, shape.n);
    const laws = training.map((sum) => fittedLaw(sum, shape, allowed));
    return Float64Array.from(units, ({ products }, place) =>
      squaredMisfit(products, shape.size, laws[fold[place]], shape.force),
    );
  };
  let kept = [...parts];
  let before = misfits(kept);
  for (;;) {
    let best: {
      readonly kept: LawPart[];
      readonly misfit: Float64Array;
      readonly lost: number;
    } | null = null;
    for (const part of kept) {
      const others = kept.filter((each) => each !== part);
      const misfit = misfits(others);
      const lost = sumOf(misfit) - sumOf(before);
      if (best === null || lost < best.lost) best = { kept: others, misfit, lost };
    }
    if (best === null || isMissed(units, before, best.misfit)) return allowedColumns(kept, shape.n);
    kept = best.kept;
    before = best.misfit;
  }
}

/** Cycles of a block are missed alike, blocks are not: chance is what differs within them. */
function isMissed(units: readonly UnitGram[], before: Float64Array, after: Float64Array): boolean {
  const strata = new Map<number | null, number[]>();
  for (const [unit, { stratum }] of units.entries()) {
    const lost = after[unit] - before[unit];
    strata.set(stratum, [...(strata.get(stratum) ?? []), lost]);
  }
  let total = 0;
  let variance = 0;
  for (const lost of strata.values()) {
    const usual = mean(lost);
    const spread = lost.reduce((sum, each) => sum + (each - usual) ** 2, 0);
    total += usual * lost.length;
    if (lost.length > 1) variance += (spread * lost.length) / (lost.length - 1);
  }
  return total > standardErrors * Math.sqrt(variance) && total > leastGain * sumOf(before);
}

/** Units alike are dealt in turn, so that each hand has some of every speed. */
function foldsOf(units: readonly UnitGram[]): readonly number[] {
  const order = units.map((_, place) => place);
  order.sort((a, b) => (units[a].stratum ?? -1) - (units[b].stratum ?? -1));
  const folds = Math.min(mostFolds, units.length);
  const fold: number[] = units.map(() => 0);
  for (const [turn, place] of order.entries()) fold[place] = turn % folds;
  return fold;
}

function allowedColumns(parts: readonly LawPart[], n: number): Uint8Array {
  const allowed = new Uint8Array(n);
  allowed[0] = 1;
  for (const { columns } of parts) for (const column of columns) allowed[column] = 1;
  return allowed;
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
