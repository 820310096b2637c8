import type { Reading } from "../fitment.ts";
import type { ReadingId } from "../outcome.ts";
import { RandomSource } from "./randomSource.ts";
import { meanOf } from "./readingMean.ts";

/**
 * What is known of one quantity: its mean, a rectangular ±halfWidth for the tool, and a normal part
 * for the scatter of its repeats. All in the quantity's own unit. With few repeats
 * a t distribution would be wider (JCGM 101:2008, 6.4.9); the tool's part then usually outweighs it.
 */
export interface DrawnReading {
  readonly id: ReadingId;
  readonly mean: number;
  readonly halfWidth: number;
  /** s/√n, with s the sample standard deviation of n ≥ 2 repeats; 0 with one value. */
  readonly standardError: number;
}

/** A reading that has passed `checkedMean`, ready to be drawn. */
export function drawnReading(id: ReadingId, reading: Reading): DrawnReading {
  const mean = meanOf(reading);
  const count = reading.values.length;
  let squares = 0;
  for (const value of reading.values) squares += (value - mean) ** 2;
  const standardError = count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count);
  return { id, mean, halfWidth: reading.tol, standardError };
}

/**
 * u, the standard uncertainty: √(tol²/3 + s²/n), in the reading's unit.
 * Source: JCGM 100:2008, 4.3.7 (rectangular), 4.2.3 (mean of repeats), 5.1.2 (their sum).
 */
export function standardUncertainty(reading: DrawnReading): number {
  return Math.hypot(reading.halfWidth / Math.sqrt(3), reading.standardError);
}

/** Fills `out` with draws of the reading from its own stream. Source: JCGM 101:2008, 6.4.2, 6.4.7. */
export function drawInto(out: Float64Array, reading: DrawnReading, seed: number): void {
  out.fill(reading.mean);
  const source = RandomSource.stream(seed, reading.id);
  if (reading.halfWidth > 0) source.addRectangular(out, reading.halfWidth);
  if (reading.standardError > 0) source.addNormal(out, reading.standardError);
}
