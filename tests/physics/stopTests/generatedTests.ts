import type {
  DepthSpeedForce,
  TimeDisplacementForce,
} from "../../../src/physics/stopTests/benchTest.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

/** Normal noise by the sum of twelve rectangular draws (kurtosis 2.9): seeded, and enough for tests. */
export class Noise {
  readonly #source: RandomSource;

  constructor(seed: number) {
    this.#source = RandomSource.stream(seed, "noise");
  }

  normal(deviation: number): number {
    let sum = -6;
    for (let draw = 0; draw < 12; draw++) sum += this.uniform();
    return deviation * sum;
  }

  uniform(): number {
    return (1 + this.#source.nextSymmetric()) / 2;
  }
}

export interface KnownStop {
  force(depthMm: number): number;
  /** N·s/mm, compressing and rebounding. */
  damping(depthMm: number): readonly [number, number];
}

/** F = 20·x + 0.35·x², damping rising with depth. */
export const knownStop: KnownStop = {
  force: (x) => (x <= 0 ? 0 : 20 * x + 0.35 * x * x),
  damping: (x) => [0.2 + 0.01 * x, 0.3 + 0.015 * x],
};

export interface RowsPlan {
  readonly depths: readonly number[];
  readonly speeds: readonly number[];
  readonly repeats?: number;
  readonly noiseN?: number;
  readonly seed?: number;
  readonly stop?: KnownStop;
}

/** Rows of a stop that pushes and never pulls, at every depth and speed of the plan. */
export function rowsOf(plan: RowsPlan): DepthSpeedForce {
  const { depths, speeds, repeats = 1, noiseN = 0, seed = 1, stop = knownStop } = plan;
  const noise = new Noise(seed);
  const rows: [number, number, number][] = [];
  for (const speed of speeds) {
    for (const depth of depths) {
      for (let repeat = 0; repeat < repeats; repeat++) {
        const [compressing, rebounding] = stop.damping(depth);
        const damped = stop.force(depth) + (speed > 0 ? compressing : rebounding) * speed;
        rows.push([depth, speed, Math.max(0, damped) + (noiseN === 0 ? 0 : noise.normal(noiseN))]);
      }
    }
  }
  return fromRows(rows);
}

export function fromRows(rows: readonly (readonly [number, number, number])[]): DepthSpeedForce {
  return {
    kind: "rows",
    depthMm: Float64Array.from(rows, (row) => row[0]),
    speedMmPerS: Float64Array.from(rows, (row) => row[1]),
    forceN: Float64Array.from(rows, (row) => row[2]),
  };
}

export interface CyclePlan {
  readonly amplitudeMm: number;
  readonly frequencyHz: number;
  readonly cycles: number;
  readonly samplesPerCycle: number;
  readonly meanMm?: number;
  readonly noiseN?: number;
  readonly noiseMm?: number;
  readonly seed?: number;
  /** Force from displacement and speed, both about the mean: mm, mm/s. */
  force(displacement: number, speed: number): number;
}

/** A sine of displacement, started a quarter before a passage, and the force it meets. */
export function cyclesOfPlan(plan: CyclePlan): TimeDisplacementForce {
  const { amplitudeMm, frequencyHz, cycles, samplesPerCycle, meanMm = 0 } = plan;
  const noise = new Noise(plan.seed ?? 1);
  const omega = 2 * Math.PI * frequencyHz;
  const count = Math.round((cycles + 0.6) * samplesPerCycle);
  const timeS = Float64Array.from(
    { length: count },
    (_, sample) => sample / samplesPerCycle / frequencyHz,
  );
  const displacement = timeS.map((time) => -amplitudeMm * Math.cos(omega * time));
  return {
    kind: "cycles",
    timeS,
    displacementMm: displacement.map((each) => meanMm + each + noise.normal(plan.noiseMm ?? 0)),
    forceN: timeS.map(
      (time, sample) =>
        plan.force(displacement[sample] as number, amplitudeMm * omega * Math.sin(omega * time)) +
        noise.normal(plan.noiseN ?? 0),
    ),
  };
}
