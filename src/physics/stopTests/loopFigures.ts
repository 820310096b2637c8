import type { Cycle } from "./cycles.ts";
import { sineFit } from "./sineFit.ts";

/** Figures of one closed loop. Energies N·mm (mJ). */
export interface LoopFigures {
  /** Half the stroke by the fitted sine, mm. */
  readonly amplitudeMm: number;
  /** Half of greatest less least displacement, mm. */
  readonly halfStrokeMm: number;
  readonly meanDisplacementMm: number;
  readonly meanForceN: number;
  readonly peakForceN: number;
  /** What the sine leaves of the displacement, root mean square as a share of the amplitude. */
  readonly sineMisfit: number;
  readonly omega: number;
  readonly energyIn: number;
  readonly energyOut: number;
  readonly loss: number;
  /** In phase with the displacement, N/mm: first harmonic of the force over the amplitude. */
  readonly rate: number;
  /** Amplitude of the force's first harmonic, N. */
  readonly forceAmplitudeN: number;
}

/**
 * Energies and rates of one cycle of displacement (mm) and force (N) in time (s). Energy in is the
 * integral of F·dx up to the deepest sample and from the least deep one on, energy out that between
 * them with its sign turned, loss the whole: the area of the loop, by the trapezoidal rule, whose error
 * for a sine of N samples is (2π/N)²/6 of the area. Rate and amplitudes by fitted sines of the cycle's
 * own period. Source: loss and rate of a harmonic cycle, any vibration text.
 */
export function loopFigures(
  timeS: Float64Array,
  displacementMm: Float64Array,
  forceN: Float64Array,
  cycle: Cycle,
): LoopFigures {
  const { from, to } = cycle;
  const omega = (2 * Math.PI) / (cycle.endS - cycle.startS);
  let deepest = from;
  let shallowest = from;
  let peakForceN = 0;
  for (let place = from; place < to; place++) {
    const displacement = displacementMm[place];
    if (displacement > displacementMm[deepest]) deepest = place;
    if (displacement < displacementMm[shallowest]) shallowest = place;
    peakForceN = Math.max(peakForceN, Math.abs(forceN[place]));
  }
  const work = (first: number, last: number): number => {
    let sum = 0;
    for (let place = first + 1; place <= last; place++) {
      const step = displacementMm[place] - displacementMm[place - 1];
      sum += ((forceN[place] + forceN[place - 1]) / 2) * step;
    }
    return sum;
  };
  // The loop is closed from its last sample to its first, which lie on either side of the passage.
  const closing =
    ((forceN[from] + forceN[to - 1]) / 2) * (displacementMm[from] - displacementMm[to - 1]);
  const [firstTurn, lastTurn] = [Math.min(deepest, shallowest), Math.max(deepest, shallowest)];
  const between = work(firstTurn, lastTurn);
  const around = work(from, firstTurn) + work(lastTurn, to - 1) + closing;
  const risesFirst = deepest < shallowest;
  const energyIn = risesFirst ? around : between;
  const energyOut = risesFirst ? -between : -around;
  const x = sineFit(timeS, displacementMm, from, to, omega);
  const f = sineFit(timeS, forceN, from, to, omega);
  const amplitudeMm = Math.hypot(x.cosine, x.sine);
  return {
    amplitudeMm,
    halfStrokeMm: (displacementMm[deepest] - displacementMm[shallowest]) / 2,
    meanDisplacementMm: x.mean,
    meanForceN: f.mean,
    peakForceN,
    sineMisfit: x.rms / amplitudeMm,
    omega,
    energyIn,
    energyOut,
    loss: energyIn - energyOut,
    rate: (x.cosine * f.cosine + x.sine * f.sine) / amplitudeMm ** 2,
    forceAmplitudeN: Math.hypot(f.cosine, f.sine),
  };
}
