import type { FitRows } from "./fitRows.ts";
import { type ForceNoise, forceNoise, whitened } from "./forceNoise.ts";
import { type LawColumns, residualsOfLaw } from "./lawColumns.ts";
import { type FitShape, fittedLaw } from "./partsKept.ts";
import { summedGrams, type UnitGram, unitGrams } from "./unitGrams.ts";

/** What a law is fitted to: the rows used, their noise, and the products of all columns by unit. */
export interface FitGrams {
  /** 1 where a row is used. */
  readonly usable: Uint8Array;
  /** Null: white. Else all columns are whitened by it. */
  readonly noise: ForceNoise | null;
  readonly grams: readonly UnitGram[];
  readonly shape: FitShape;
}

/** Rows of a stroke whose windows hardly overlap, so that their noise is each its own. */
const apartAStroke = 50;

/**
 * Products of the law's columns, those of the doubt and the force. Where the load cell's noise holds
 * together from row to row, as what is left of the force by the whole law shows, rows are thinned to those
 * that hardly overlap and weighted by that noise (generalised least squares: Aitken 1935, from memory).
 */
export function fitGrams(fit: FitRows, columns: LawColumns): FitGrams {
  const white = { usable: fit.usable, noise: null };
  const apart = rowsApart(fit);
  const first = gramsOf(fit, columns, { usable: apart, noise: null });
  const everything = new Uint8Array(columns.count).fill(1);
  const law = fittedLaw(summedGrams(first.grams, first.shape.size), first.shape, everything);
  const left = residualsOfLaw(fit.rows.forceN, columns, law);
  const noise = forceNoise(fit.rows.timeS, apart, left);
  return gramsOf(fit, columns, noise === null ? white : { usable: apart, noise });
}

function rowsApart({ rows: { stroke }, usable }: FitRows): Uint8Array {
  const counts = new Map<number, number>();
  for (const each of stroke) counts.set(each, 1 + (counts.get(each) ?? 0));
  let place = 0;
  return usable.map((use, row) => {
    place = stroke[row] === stroke[row - 1] ? place + 1 : 0;
    const every = Math.max(1, Math.round((counts.get(stroke[row]) ?? 1) / apartAStroke));
    return use === 1 && place % every === 0 ? 1 : 0;
  });
}

function gramsOf(
  { rows, units, rampBlocks }: FitRows,
  columns: LawColumns,
  { usable, noise }: Pick<FitGrams, "usable" | "noise">,
): FitGrams {
  const unitOfStroke = new Map<number, number>();
  for (const [index, { strokes }] of units.entries()) {
    for (const stroke of strokes) unitOfStroke.set(stroke, index);
  }
  const unit = Int32Array.from(usable, (use, row) =>
    use === 1 ? (unitOfStroke.get(rows.stroke[row]) ?? -1) : -1,
  );
  const [first, last] = [rows.timeS[0] ?? 0, rows.timeS.at(-1) ?? 0];
  const middle = (first + last) / 2;
  const half = Math.max((last - first) / 2, Number.MIN_VALUE);
  const all = [
    ...columns.values,
    rows.forceRate,
    new Float64Array(usable.length).fill(1),
    rows.timeS.map((time) => (time - middle) / half),
    columns.slope,
    rows.forceN,
  ].map((column) => (noise === null ? column : whitened(rows.timeS, usable, column, noise)));
  const grams = unitGrams(
    all,
    unit,
    units.map(({ block }) => (rampBlocks.has(block) ? null : block)),
  );
  return {
    usable,
    noise,
    grams,
    shape: { size: all.length, n: columns.count, force: all.length - 1 },
  };
}
