import { add, expm, identity, type Matrix, matrix, multiply } from "mathjs";

export interface SimulationOptions {
  readonly seed: number;
  readonly seconds: number;
  readonly stepS: number;
  readonly batches: number;
}

export interface Measured {
  readonly mean: number;
  /** Half-width of the 99 % confidence interval, from the scatter of the batches' means. */
  readonly halfWidth99: number;
}

/** Standard normal numbers: xorshift32 and the polar method of Marsaglia. */
function normals(seed: number): () => number {
  let state = seed | 0 || 1;
  const uniform = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const radius = x * x + y * y;
      if (radius === 0 || radius >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(radius)) / radius);
      spare = y * factor;
      return x * factor;
    }
  };
}

/** Quantile 0.995 of Student's t with 59 degrees of freedom (tables; from memory): 2.662. */
const t995 = 2.662;

export function measured(batchMeans: readonly number[]): Measured {
  const count = batchMeans.length;
  const mean = batchMeans.reduce((sum, value) => sum + value, 0) / count;
  const scatter = batchMeans.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1);
  return { mean, halfWidth99: t995 * Math.sqrt(scatter / count) };
}

/**
 * Steps x' = A·x − [0, 0, w, 0] exactly over steps in which the white noise w of intensity D is held at
 * N(0, D/step): x₊ = e^{A·step}·x + (∫e^{A·t}dt)·b·w. Calls back with each state and its acceleration.
 */
export function simulate(
  a: readonly (readonly number[])[],
  intensity: number,
  { seed, seconds, stepS }: SimulationOptions,
  take: (step: number, state: Float64Array) => void,
): void {
  const scaled = multiply(matrix(a.map((row) => [...row])), stepS) as Matrix;
  const transition = (expm(scaled) as Matrix).toArray() as number[][];
  let series = identity(4) as Matrix;
  let term = identity(4) as Matrix;
  for (let order = 2; order < 20; order++) {
    term = multiply(multiply(term, scaled), 1 / order) as Matrix;
    series = add(series, term) as Matrix;
  }
  const input = (series.toArray() as number[][]).map((row) => -stepS * (row[2] as number));
  const flat = Float64Array.from(transition.flat());
  const deviation = Math.sqrt(intensity / stepS);
  const next = normals(seed);
  const x = new Float64Array(4);
  const y = new Float64Array(4);
  const steps = Math.round(seconds / stepS);
  for (let step = 0; step < steps; step++) {
    const noise = deviation * next();
    for (let i = 0; i < 4; i++) {
      let sum = (input[i] as number) * noise;
      for (let j = 0; j < 4; j++) sum += (flat[4 * i + j] as number) * (x[j] as number);
      y[i] = sum;
    }
    x.set(y);
    take(step, x);
  }
}

export function simulatedVariances(
  a: readonly (readonly number[])[],
  intensity: number,
  options: SimulationOptions,
): Record<"travel" | "travelSpeed" | "sprung" | "tyre", Measured> {
  const [a0 = 0, a1 = 0, , a3 = 0] = a[1] ?? [];
  const perBatch = Math.round(options.seconds / options.stepS / options.batches);
  const sums = Array.from({ length: options.batches }, () => new Float64Array(4));
  simulate(a, intensity, options, (step, x) => {
    const batch = sums[Math.floor(step / perBatch)];
    if (batch === undefined) return;
    const [travel, sprungSpeed, tyre, unsprungSpeed] = x as unknown as [
      number,
      number,
      number,
      number,
    ];
    const sprung = a0 * travel + a1 * sprungSpeed + a3 * unsprungSpeed;
    batch[0] = (batch[0] as number) + travel * travel;
    batch[1] = (batch[1] as number) + (sprungSpeed - unsprungSpeed) ** 2;
    batch[2] = (batch[2] as number) + sprung * sprung;
    batch[3] = (batch[3] as number) + tyre * tyre;
  });
  const of = (place: number) => measured(sums.map((batch) => (batch[place] as number) / perBatch));
  return { travel: of(0), travelSpeed: of(1), sprung: of(2), tyre: of(3) };
}
