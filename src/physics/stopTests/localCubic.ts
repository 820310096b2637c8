/** A local cubic's value and slope at its middle, for two quantities at once. */
export interface LocalFit {
  x: number;
  /** dx/dt. */
  xSlope: number;
  y: number;
  /** dy/dt. */
  ySlope: number;
}

const size = 4;

/**
 * Least-squares cubic through the samples `from` … `to` (included) of x and y over time, not necessarily
 * evenly spaced, read at time `at`: value and slope of x and of y. Both
 * quantities pass through the same stretch of samples, so that a smoothed force still belongs to its smoothed speed.
 * Fewer than four samples: a line, a value. Source: local regression, Savitzky & Golay, Anal. Chem. 36
 * (1964) 1627, for even spacing; Cleveland, J. Am. Stat. Assoc. 74 (1979) 829, for any.
 */
export class LocalCubic {
  readonly #matrix = new Float64Array(size * size);
  readonly #rightX = new Float64Array(size);
  readonly #rightY = new Float64Array(size);
  readonly #powers = new Float64Array(2 * size - 1);

  fit(
    timeS: Float64Array,
    x: Float64Array,
    y: Float64Array,
    from: number,
    to: number,
    at: number,
    into: LocalFit,
  ): void {
    const halfS = Math.max(at - timeS[from], timeS[to] - at);
    const terms = Math.min(size, to - from + 1);
    const { x: x0, y: y0 } = { x: x[from], y: y[from] };
    const powers = this.#powers.fill(0);
    const rightX = this.#rightX.fill(0);
    const rightY = this.#rightY.fill(0);
    for (let place = from; place <= to; place++) {
      const u = halfS > 0 ? (timeS[place] - at) / halfS : 0;
      const fromX = x[place] - x0;
      const fromY = y[place] - y0;
      let power = 1;
      for (let k = 0; k < 2 * terms - 1; k++) {
        powers[k] = powers[k] + power;
        if (k < terms) {
          rightX[k] = rightX[k] + power * fromX;
          rightY[k] = rightY[k] + power * fromY;
        }
        power *= u;
      }
    }
    this.#solve(terms);
    into.x = x0 + rightX[0];
    into.y = y0 + rightY[0];
    into.xSlope = terms > 1 && halfS > 0 ? rightX[1] / halfS : 0;
    into.ySlope = terms > 1 && halfS > 0 ? rightY[1] / halfS : 0;
  }

  /** Cholesky's factors of the matrix of powers; both right sides become their solutions. */
  #solve(terms: number): void {
    const m = this.#matrix;
    const powers = this.#powers;
    for (let i = 0; i < terms; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = powers[i + j];
        for (let k = 0; k < j; k++) sum -= m[i * size + k] * m[j * size + k];
        if (i === j) m[i * size + i] = Math.sqrt(Math.max(sum, 1e-12));
        else m[i * size + j] = sum / m[j * size + j];
      }
    }
    for (const right of [this.#rightX, this.#rightY]) {
      for (let i = 0; i < terms; i++) {
        let sum = right[i];
        for (let k = 0; k < i; k++) sum -= m[i * size + k] * right[k];
        right[i] = sum / m[i * size + i];
      }
      for (let i = terms - 1; i >= 0; i--) {
        let sum = right[i];
        for (let k = i + 1; k < terms; k++) sum -= m[k * size + i] * right[k];
        right[i] = sum / m[i * size + i];
      }
    }
  }
}
