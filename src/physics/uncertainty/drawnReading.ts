import type { Reading } from "../fitment.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { meanOf } from "./readingMean.ts";
import { standardNormal, standardRectangular } from "./standardDraws.ts";

/**
 * What is known of one quantity: its mean, a rectangular ±halfWidth for the tool, and a normal part
 * for the scatter of its repeats. All in the quantity's own unit. With few repeats
 * a t distribution would be wider (JCGM 101:2008, 6.4.9); the tool's part then usually outweighs it.
 */
export interface DrawnReading<Id extends string = QuantityId> {
  readonly id: Id;
  readonly mean: number;
  readonly halfWidth: number;
  /** s/√n, with s the sample standard deviation of n ≥ 2 repeats; 0 with one value. */
  readonly standardError: number;
}

/** A reading that has passed `checkedMean`, ready to be drawn. */
export function drawnReading<Id extends string>(id: Id, reading: Reading): DrawnReading<Id> {
  return { id, ...spreadOf(reading) };
}

/** How a reading spreads, whatever it is a reading of. */
export function spreadOf(reading: Reading): Omit<DrawnReading, "id"> {
  const mean = meanOf(reading);
  const count = reading.values.length;
  let squares = 0;
  for (const value of reading.values) squares += (value - mean) ** 2;
  const standardError = count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count);
  return { mean, halfWidth: reading.tol, standardError };
}

/** u of one value, and of repeats whose sample standard deviation is s. */
export const uncertaintyFormulas = {
  once: "u = tol / √3",
  repeated: "u = √[tol² / 3 + (s / √n)²]",
} as const;

/**
 * u, the standard uncertainty: √(tol²/3 + s²/n), in the reading's unit.
 * Source: JCGM 100:2008, 4.3.7 (rectangular), 4.2.3 (mean of repeats), 5.1.2 (their sum).
 */
export function standardUncertainty(reading: Omit<DrawnReading, "id">): number {
  return Math.hypot(reading.halfWidth / Math.sqrt(3), reading.standardError);
}

/**
 * One number a draw for a reading: mean + rectangular part + normal part. The number of a draw depends
 * on nothing but the reading and the seed. Source: JCGM 101:2008, 6.4.2, 6.4.7.
 */
export class ReadingDraws {
  readonly mean: number;
  readonly halfWidth: number;
  readonly standardError: number;
  /** Standard draws, −1 … 1. */
  readonly rectangular: Float32Array;
  /** Standard normal draws; none where the reading has no normal part. */
  readonly normal: Float32Array | null;

  /** @param seed any integer */
  constructor(reading: DrawnReading<string>, seed: number, samples: number) {
    this.mean = reading.mean;
    this.halfWidth = reading.halfWidth;
    this.standardError = reading.standardError;
    this.rectangular = standardRectangular(reading.id, seed, samples);
    this.normal = reading.standardError > 0 ? standardNormal(reading.id, seed, samples) : null;
  }

  /** The number of one draw, in the reading's unit. */
  at(draw: number): number {
    const byTool = this.mean + this.halfWidth * (this.rectangular[draw] as number);
    return this.normal === null
      ? byTool
      : byTool + this.standardError * (this.normal[draw] as number);
  }
}
