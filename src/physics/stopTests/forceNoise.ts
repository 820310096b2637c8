/**
 * Noise of a load cell: white, and a part that holds together over `tauS` (an Ornstein-Uhlenbeck process),
 * whose variance is `ratio` times that of the white part.
 */
export interface ForceNoise {
  readonly tauS: number;
  readonly ratio: number;
}

const times = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5] as const;
const ratios = [0.1, 0.3, 1, 3, 10, 30, 100] as const;
/** Log likelihood by which held-together noise must be better than white alone. */
const clearly = 20;

/** The likeliest noise of a residual, by its innovations (Kalman's filter); null where white alone does as well. */
export function forceNoise(
  timeS: Float64Array,
  usable: Uint8Array,
  residualN: Float64Array,
): ForceNoise | null {
  let best: ForceNoise | null = null;
  let most = logLikelihood(timeS, usable, residualN, null) + clearly;
  for (const tauS of times) {
    for (const ratio of ratios) {
      const likelihood = logLikelihood(timeS, usable, residualN, { tauS, ratio });
      if (likelihood > most) {
        most = likelihood;
        best = { tauS, ratio };
      }
    }
  }
  return best;
}

function logLikelihood(
  timeS: Float64Array,
  usable: Uint8Array,
  residualN: Float64Array,
  noise: ForceNoise | null,
): number {
  const { tauS, ratio } = noise ?? { tauS: 1, ratio: 0 };
  let [held, variance, before] = [0, ratio, Number.NEGATIVE_INFINITY];
  let [squares, logs, count] = [0, 0, 0];
  for (let row = 0; row < residualN.length; row++) {
    if (usable[row] !== 1) continue;
    const kept = Math.exp((before - timeS[row]) / tauS);
    before = timeS[row];
    variance = kept * kept * variance + ratio * (1 - kept * kept);
    const total = variance + 1;
    const surprise = residualN[row] - kept * held;
    held = kept * held + (variance / total) * surprise;
    variance /= total;
    squares += (surprise * surprise) / total;
    logs += Math.log(total);
    count++;
  }
  return -0.5 * (count * Math.log(squares / Math.max(1, count)) + logs);
}

/** A column's surprises to the noise's filter, each over its spread: rows whose noise is white and alike. */
export function whitened(
  timeS: Float64Array,
  usable: Uint8Array,
  values: Float64Array,
  { tauS, ratio }: ForceNoise,
): Float64Array {
  const white = new Float64Array(values.length);
  let [held, variance, before] = [0, ratio, Number.NEGATIVE_INFINITY];
  for (let row = 0; row < values.length; row++) {
    if (usable[row] !== 1) continue;
    const kept = Math.exp((before - timeS[row]) / tauS);
    before = timeS[row];
    variance = kept * kept * variance + ratio * (1 - kept * kept);
    const total = variance + 1;
    const surprise = values[row] - kept * held;
    held = kept * held + (variance / total) * surprise;
    variance /= total;
    white[row] = surprise / Math.sqrt(total);
  }
  return white;
}
