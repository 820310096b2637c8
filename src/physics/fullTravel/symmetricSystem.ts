/**
 * Solves A·x = b for a symmetric, positive definite A of a few rows by its Cholesky factor.
 * Source: Golub & Van Loan, Matrix Computations, 4.2 (from memory). `matrix` is row by row and is left
 * as it is; a pivot that rounding has made 0 or less is raised to the least that the diagonal can tell.
 */
export class SymmetricSystem {
  readonly #factor: readonly Float64Array[];

  constructor(matrix: readonly Float64Array[]) {
    const factor: Float64Array[] = [];
    for (const [row, entries] of matrix.entries()) {
      const own = new Float64Array(matrix.length);
      for (let column = 0; column <= row; column++) {
        const other = column === row ? own : factor[column];
        let rest = entries[column];
        for (let k = 0; k < column; k++) rest -= own[k] * other[k];
        own[column] =
          column === row ? Math.sqrt(Math.max(rest, 1e-12 * entries[row])) : rest / other[column];
      }
      factor.push(own);
    }
    this.#factor = factor;
  }

  /** a·A⁻¹·b. */
  product(a: Float64Array, b: Float64Array): number {
    const [left, right] = [this.#forward(a), this.#forward(b)];
    return left.reduce((sum, value, index) => sum + value * right[index], 0);
  }

  /** L⁻¹·b */
  #forward(b: Float64Array): Float64Array {
    const solved = new Float64Array(b.length);
    for (const [row, own] of this.#factor.entries()) {
      let rest = b[row];
      for (let k = 0; k < row; k++) rest -= own[k] * solved[k];
      solved[row] = rest / own[row];
    }
    return solved;
  }
}
