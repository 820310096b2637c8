/** Products of the columns of one resampled unit (a cycle, the ramp, a hold): row by row, size × size. */
export interface UnitGram {
  /** Units of one stratum are alike and may stand for each other; null: always taken as it is. */
  readonly stratum: number | null;
  readonly products: Float64Array;
  readonly rows: number;
}

/**
 * Σ cᵢ·cⱼ over the rows of each unit, for all columns. `unit` names each row's unit, −1 for a row that is
 * not used; `strata` the stratum of each unit.
 */
export function unitGrams(
  columns: readonly Float64Array[],
  unit: Int32Array,
  strata: readonly (number | null)[],
): readonly UnitGram[] {
  const size = columns.length;
  const grams = strata.map((stratum) => ({
    stratum,
    products: new Float64Array(size * size),
    rows: 0,
  }));
  const values = new Float64Array(size);
  for (let row = 0; row < unit.length; row++) {
    const gram = grams[unit[row]];
    if (gram === undefined) continue;
    gram.rows++;
    for (let i = 0; i < size; i++) values[i] = columns[i][row];
    for (let i = 0; i < size; i++) {
      const value = values[i];
      if (value === 0) continue;
      for (let j = 0; j <= i; j++) {
        const at = i * size + j;
        gram.products[at] = gram.products[at] + value * values[j];
      }
    }
  }
  for (const { products } of grams) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < i; j++) products[j * size + i] = products[i * size + j];
    }
  }
  return grams.filter(({ rows }) => rows > 0);
}

/** Sum of some units' products, each as often as it is named. */
export function summedGrams(grams: Iterable<UnitGram>, size: number): Float64Array {
  const sum = new Float64Array(size * size);
  for (const { products } of grams) {
    for (let at = 0; at < sum.length; at++) sum[at] = sum[at] + products[at];
  }
  return sum;
}

/** Products of the first n columns, n × n, and those with a column further on. */
export function normalEquations(
  sum: Float64Array,
  size: number,
  n: number,
  against: number,
): { readonly gram: Float64Array; readonly right: Float64Array } {
  const gram = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) gram[i * n + j] = sum[i * size + j];
    right[i] = sum[i * size + against];
  }
  return { gram, right };
}

/** ‖A·x − b‖² from the products: A the first x.length columns, b the column `against`. */
export function squaredMisfit(
  sum: Float64Array,
  size: number,
  x: Float64Array,
  against: number,
): number {
  let total = sum[against * size + against];
  for (let i = 0; i < x.length; i++) {
    const xi = x[i];
    if (xi === 0) continue;
    total -= 2 * xi * sum[i * size + against];
    for (let j = 0; j < x.length; j++) total += xi * x[j] * sum[i * size + j];
  }
  return Math.max(0, total);
}
