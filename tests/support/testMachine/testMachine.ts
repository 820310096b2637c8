import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";
import type { Motion } from "./motions.ts";
import { type TrueStop, TrueStopState } from "./trueStop.ts";

/** What a machine adds to the truth. */
export interface Measuring {
  readonly samplesPerS: number;
  /** Standard deviation of white noise of force, N, and depth, mm. */
  readonly whiteN?: number;
  readonly whiteMm?: number;
  /** Standard deviation of correlated noise, N, and the time over which it holds together, s. */
  readonly correlatedN?: number;
  readonly correlationS?: number;
  /** Drift of the load cell's zero from the first row to the last, N. */
  readonly driftN?: number;
  /** How much later than the depth the force is recorded, s. */
  readonly delayS?: number;
  readonly forceZeroN?: number;
  readonly depthZeroMm?: number;
  readonly seed?: number;
}

export interface Measured {
  readonly timeS: Float64Array;
  readonly depthMm: Float64Array;
  readonly forceN: Float64Array;
}

/** Normal by the sum of twelve rectangular draws. */
function normal(source: RandomSource): number {
  let sum = 0;
  for (let draw = 0; draw < 12; draw++) sum += source.nextSymmetric() / 2;
  return sum;
}

/** What the machine records of a stop moved so. */
export function measure(stop: TrueStop, motion: Motion, measuring: Measuring): Measured {
  const { samplesPerS, whiteN = 0, whiteMm = 0, correlatedN = 0, driftN = 0 } = measuring;
  const { correlationS = 0.1, delayS = 0, forceZeroN = 0, depthZeroMm = 0 } = measuring;
  const source = RandomSource.stream(measuring.seed ?? 1, "machine");
  const count = Math.floor(motion.durationS * samplesPerS) + 1;
  const within = Math.max(1, Math.ceil(4000 / samplesPerS));
  const dt = 1 / samplesPerS / within;
  const state = new TrueStopState(stop, motion.depth(0));
  const fine = new Float64Array(count * within);
  let before = motion.depth(0);
  for (let step = 1; step < fine.length; step++) {
    const x = motion.depth(step * dt);
    fine[step] = state.step(dt, x, (x - before) / dt);
    before = x;
  }
  const kept = Math.exp(-1 / samplesPerS / correlationS);
  let correlated = correlatedN * normal(source);
  const timeS = new Float64Array(count);
  const depthMm = new Float64Array(count);
  const forceN = new Float64Array(count);
  for (let row = 0; row < count; row++) {
    const t = row / samplesPerS;
    const from = Math.max(0, (t - delayS) / dt);
    const low = Math.min(fine.length - 1, Math.floor(from));
    const high = Math.min(fine.length - 1, low + 1);
    const share = from - Math.floor(from);
    const force = (fine[low] as number) * (1 - share) + (fine[high] as number) * share;
    correlated = kept * correlated + Math.sqrt(1 - kept * kept) * correlatedN * normal(source);
    timeS[row] = t;
    depthMm[row] = motion.depth(t) + depthZeroMm + whiteMm * normal(source);
    forceN[row] =
      force + forceZeroN + whiteN * normal(source) + correlated + (driftN * row) / count;
  }
  return { timeS, depthMm, forceN };
}
