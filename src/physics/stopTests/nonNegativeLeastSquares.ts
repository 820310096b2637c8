/** Share of a column's own size below which a gradient counts as none. */
const gradientTolerance = 1e-9;

/**
 * x ≥ 0 that minimises ‖A·x − b‖², from the normal equations: `gram` = AᵀA row by row (n × n) and
 * `right` = Aᵀb (n). Only columns with `allowed` 1 may be above 0 (all where absent). Columns are
 * scaled to length 1 first, so that their units do not matter; one that depends on others stays at 0.
 * Source: active sets of Lawson & Hanson, Solving Least Squares Problems, chapter 23 (algorithm NNLS).
 */
export function nonNegativeLeastSquares(
  gram: Float64Array,
  right: Float64Array,
  allowed?: Uint8Array,
): Float64Array {
  const n = right.length;
  const scale = new Float64Array(n);
  let largest = 0;
  for (let i = 0; i < n; i++) {
    const square = gram[i * n + i];
    scale[i] = square > 0 ? 1 / Math.sqrt(square) : 0;
    largest = Math.max(largest, Math.abs(right[i] * scale[i]));
  }
  const x = new Float64Array(n);
  const passive: number[] = [];
  const barred = new Uint8Array(n);
  for (let round = 0; round < 6 * n; round++) {
    let entering = -1;
    let steepest = gradientTolerance * largest;
    for (let i = 0; i < n; i++) {
      if (scale[i] === 0 || barred[i] === 1 || passive.includes(i) || allowed?.[i] === 0) continue;
      let gradient = right[i];
      for (const j of passive) gradient -= gram[i * n + j] * x[j];
      gradient *= scale[i];
      if (gradient > steepest) {
        steepest = gradient;
        entering = i;
      }
    }
    if (entering === -1) return x;
    passive.push(entering);
    for (;;) {
      const tried = solvedOn(passive, gram, right, scale);
      if (tried === null) {
        barred[entering] = 1;
        passive.splice(passive.indexOf(entering), 1);
        break;
      }
      let step = 1;
      for (const [place, i] of passive.entries()) {
        const to = tried[place];
        const from = x[i];
        if (to <= 0) step = Math.min(step, from / Math.max(from - to, Number.MIN_VALUE));
      }
      for (const [place, i] of passive.entries()) {
        x[i] = x[i] + step * (tried[place] - x[i]);
      }
      if (step === 1) break;
      for (let place = passive.length - 1; place >= 0; place--) {
        const i = passive[place];
        if (tried[place] > 0 || x[i] * 1e12 > Math.abs(tried[place])) {
          continue;
        }
        x[i] = 0;
        passive.splice(place, 1);
        if (i === entering) barred[i] = 1;
      }
    }
  }
  return x;
}

/** Solution of the normal equations on some columns by Cholesky's factors; null where they depend. */
function solvedOn(
  columns: readonly number[],
  gram: Float64Array,
  right: Float64Array,
  scale: Float64Array,
): Float64Array | null {
  const n = right.length;
  const count = columns.length;
  const factor = new Float64Array(count * count);
  const y = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const row = columns[i];
    for (let j = 0; j <= i; j++) {
      const column = columns[j];
      let sum = gram[row * n + column] * scale[row] * scale[column];
      for (let k = 0; k < j; k++) {
        sum -= factor[i * count + k] * factor[j * count + k];
      }
      if (i === j) {
        if (sum < 1e-10) return null;
        factor[i * count + i] = Math.sqrt(sum);
      } else factor[i * count + j] = sum / factor[j * count + j];
    }
    let sum = right[row] * scale[row];
    for (let k = 0; k < i; k++) sum -= factor[i * count + k] * y[k];
    y[i] = sum / factor[i * count + i];
  }
  for (let i = count - 1; i >= 0; i--) {
    let sum = y[i];
    for (let k = i + 1; k < count; k++) sum -= factor[k * count + i] * y[k];
    y[i] = sum / factor[i * count + i];
  }
  for (let i = 0; i < count; i++) {
    y[i] = y[i] * scale[columns[i]];
  }
  return y;
}
