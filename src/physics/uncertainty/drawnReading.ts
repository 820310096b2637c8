import type { Reading } from "../fitment.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { meanOf } from "./readingMean.ts";

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
