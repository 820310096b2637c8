import type { Reading } from "../fitment.ts";

/** The arithmetic mean of numbers of one kind, of which there is at least one. */
export function mean(values: readonly number[] | Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** The mean of a reading's repeats, in the reading's own unit. */
export function meanOf(reading: Reading): number {
  return mean(reading.values);
}
