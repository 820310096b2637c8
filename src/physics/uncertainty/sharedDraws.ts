import type { DrawnReading } from "./drawnReading.ts";
import { ReadingDraws } from "./readingDraws.ts";

/**
 * Draws made where nothing else is asked for: an end of a 95 % interval then scatters by about 0.5 % of
 * its width (one standard deviation, of a normal figure: √(p·(1 − p)/n) over its density there).
 */
export const defaultSamples = 20_000;
/** Fewest draws that are worth a 95 % interval. */
export const leastSamples = 10_000;
/** The fixed seed: phone and command line draw the same numbers. */
const defaultSeed = 20_080_101;

/** Draws of every reading, shared by all corners and figures that use it. */
export class SharedDraws {
  readonly samples: number;
  readonly #seed: number;

  constructor(samples = defaultSamples, seed = defaultSeed) {
    this.samples = Math.max(leastSamples, Math.round(samples) || defaultSamples);
    this.#seed = seed;
  }

  /** One number a draw for a reading in doubt; the same for the same reading. */
  of(reading: DrawnReading): ReadingDraws {
    return new ReadingDraws(reading, this.#seed, this.samples);
  }
}
