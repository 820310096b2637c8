/** Noise of the simulated machine's force: white, and a part that holds together over 0.1 s. */
export interface Noise {
  readonly whiteN: number;
  readonly correlatedN: number;
  readonly samplesPerS: number;
}

const correlationS = 0.1;

/**
 * The information JᵀC⁻¹J that a test's rows hold of `size` values, where `valuesAt` gives what force each
 * of them makes at a row (Kay, Fundamentals of Statistical Signal Processing, vol. 1, 3.7 and 3.9, from
 * memory). C is that of the simulated machine: white noise and an Ornstein-Uhlenbeck process, whitened row
 * by row by its filter.
 */
export function information(
  size: number,
  rows: number,
  valuesAt: (row: number) => readonly number[] | Float64Array,
  { whiteN, correlatedN, samplesPerS }: Noise,
): readonly Float64Array[] {
  const found = Array.from({ length: size }, () => new Float64Array(size));
  const held = new Float64Array(size);
  const surprise = new Float64Array(size);
  const kept = Math.exp(-1 / samplesPerS / correlationS);
  let variance = correlatedN ** 2;
  for (let row = 1; row < rows; row++) {
    const values = valuesAt(row);
    variance = kept * kept * variance + correlatedN ** 2 * (1 - kept * kept);
    const total = variance + whiteN ** 2;
    const gain = variance / total;
    for (let i = 0; i < size; i++) {
      surprise[i] = (values[i] ?? 0) - kept * (held[i] ?? 0);
      held[i] = kept * (held[i] ?? 0) + gain * (surprise[i] ?? 0);
    }
    for (const [i, line] of found.entries()) {
      const own = (surprise[i] ?? 0) / total;
      if (own === 0) continue;
      for (let j = 0; j <= i; j++) line[j] = (line[j] ?? 0) + own * (surprise[j] ?? 0);
    }
    variance *= 1 - gain;
  }
  return found.map((line, i) =>
    line.map((value, j) => (j <= i ? value : ((found[j] as Float64Array)[i] ?? 0))),
  );
}

/** Gauss and Jordan, of a positive definite matrix, its rows and columns first brought to one size. */
export function inverse(matrix: readonly Float64Array[]): readonly (readonly number[])[] {
  const size = matrix.length;
  const scale = matrix.map((line, i) => 1 / Math.sqrt(line[i] ?? 1));
  const wide = matrix.map((line, i) => [
    ...Array.from(line, (value, j) => value * (scale[i] ?? 1) * (scale[j] ?? 1)),
    ...Array.from({ length: size }, (_, j) => (i === j ? 1 : 0)),
  ]);
  for (let pivot = 0; pivot < size; pivot++) {
    const own = wide[pivot] as number[];
    const lead = own[pivot] as number;
    for (let j = 0; j < own.length; j++) own[j] = (own[j] as number) / lead;
    for (const [i, line] of wide.entries()) {
      const factor = line[pivot] as number;
      if (i === pivot || factor === 0) continue;
      for (let j = 0; j < line.length; j++) {
        line[j] = (line[j] as number) - factor * (own[j] as number);
      }
    }
  }
  return wide.map((line, i) =>
    line.slice(size).map((value, j) => value * (scale[i] ?? 1) * (scale[j] ?? 1)),
  );
}

/** Φ(a) − Φ(−a) of the normal distribution. Abramowitz & Stegun 7.1.26, error below 1.5e-7. */
export function within(a: number): number {
  const t = 1 / (1 + 0.3275911 * (a / Math.SQRT2));
  const [a1, a2, a3, a4, a5] = [0.254829592, -0.284496736, 1.421413741, -1.453152027, 1.061405429];
  return 1 - t * (a1 + t * (a2 + t * (a3 + t * (a4 + t * a5)))) * Math.exp((-a * a) / 2);
}
