/** A stop whose law is known: F = max(0, F0(x)·(e + h·σ(v)) + Σq + c(x, sign v)·v) for x > 0. */
export interface TrueStop {
  /** Static force, N, over compression, mm; 0 at and below 0. */
  force(x: number): number;
  /** c, N·s/mm, at a compression while compressing (1) or rebounding (−1). */
  damping?(x: number, direction: 1 | -1): number;
  readonly restLoss?: number;
  readonly branches?: readonly { readonly tauS: number; readonly share: number }[];
}

/** Speed, mm/s, up to which the rest loss rises to its whole. */
const fullLossSpeed = 5;

/** The stop's inner state, carried along a motion given step by step. */
export class TrueStopState {
  readonly #stop: TrueStop;
  readonly #q: number[];
  #forceBefore: number;

  constructor(stop: TrueStop, x: number) {
    this.#stop = stop;
    this.#q = (stop.branches ?? []).map(() => 0);
    this.#forceBefore = stop.force(x);
  }

  /** Force, N, after a step of dt s that ends at x mm with v mm/s; F0 runs straight within the step. */
  step(dt: number, x: number, v: number): number {
    const stop = this.#stop;
    const now = stop.force(x);
    const rise = now - this.#forceBefore;
    this.#forceBefore = now;
    let sum = 0;
    (stop.branches ?? []).forEach(({ tauS, share }, place) => {
      const decay = Math.exp(-dt / tauS);
      const q = (this.#q[place] as number) * decay + ((share * rise * tauS) / dt) * (1 - decay);
      this.#q[place] = q;
      sum += q;
    });
    if (!(x > 0)) return 0;
    const sigma = Math.max(-1, Math.min(1, v / fullLossSpeed));
    const c = stop.damping?.(x, v > 0 ? 1 : -1) ?? 0;
    return Math.max(0, now * (1 + (stop.restLoss ?? 0) * sigma) + sum + c * v);
  }
}

export interface TrueHit {
  readonly peakForceN: number;
  readonly peakCompressionMm: number;
  readonly leaveSpeedMmPerS: number;
  readonly energyInJ: number;
  readonly energyOutJ: number;
}

/** A free mass, kg, that meets the stop at a speed, m/s, without weight: m·x″ = −F; midpoint steps. */
export function trueHit(stop: TrueStop, massKg: number, speedMPerS: number): TrueHit {
  const dt = 1e-5;
  const state = new TrueStopState(stop, 0);
  let x = 0;
  let v = 1000 * speedMPerS;
  let force = 0;
  let [peakForceN, peakCompressionMm, energyInJ, energyOutJ] = [0, 0, 0, 0];
  for (let step = 0; step < 4e5; step++) {
    // N/kg = m/s² = 1000 mm/s².
    const half = v - ((force / massKg) * 1000 * dt) / 2;
    x += half * dt;
    if (x <= 0 && half < 0) break;
    const next = state.step(dt, x, half);
    const work = (((force + next) / 2) * half * dt) / 1000;
    if (half > 0) energyInJ += work;
    else energyOutJ -= work;
    force = next;
    v = half - ((force / massKg) * 1000 * dt) / 2;
    peakForceN = Math.max(peakForceN, force);
    peakCompressionMm = Math.max(peakCompressionMm, x);
  }
  return { peakForceN, peakCompressionMm, leaveSpeedMmPerS: -v, energyInJ, energyOutJ };
}

/** F0 = k·x + b·x³: rising ever steeper. */
export function progressive(k: number, b: number): (x: number) => number {
  return (x) => (x <= 0 ? 0 : k * x + b * x ** 3);
}
