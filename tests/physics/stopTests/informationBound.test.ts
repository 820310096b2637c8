import { expect, test } from "vitest";
import { designs, trueStops } from "../../support/testMachine/designs.ts";

/**
 * Cramér and Rao: no unbiased estimate has a smaller covariance than the inverse of the information JᵀC⁻¹J
 * (Kay, Fundamentals of Statistical Signal Processing, vol. 1, 3.7 and 3.9, from memory). C is that of the
 * simulated machine: white noise and an Ornstein-Uhlenbeck process, whitened row by row by its filter. All
 * but the dashpot's ten values is taken as known without error, so that the bound is below any real one.
 */
const [whiteN, correlatedN, correlationS, samplesPerS] = [15, 40, 0.1, 1000] as const;
const knots = [1, 10.5, 20, 29.5, 39] as const;

function hats(depth: number): readonly number[] {
  return knots.map((knot) => Math.max(0, 1 - Math.abs(depth - knot) / 9.5));
}

function leastErrors(motionName: string): readonly number[] {
  const motion = designs[motionName]?.();
  if (motion === undefined) throw new Error(motionName);
  const size = 2 * knots.length;
  const information = Array.from({ length: size }, () => new Float64Array(size));
  const held = new Float64Array(size);
  const kept = Math.exp(-1 / samplesPerS / correlationS);
  let variance = correlatedN ** 2;
  const rows = Math.floor(motion.durationS * samplesPerS);
  for (let row = 1; row < rows; row++) {
    const depth = motion.depth(row / samplesPerS);
    const speed = (depth - motion.depth((row - 1) / samplesPerS)) * samplesPerS;
    const column = depth > 0 ? hats(depth).map((hat) => hat * speed) : knots.map(() => 0);
    const values = [
      ...column.map((c) => (speed > 0 ? c : 0)),
      ...column.map((c) => (speed < 0 ? c : 0)),
    ];
    variance = kept * kept * variance + correlatedN ** 2 * (1 - kept * kept);
    const total = variance + whiteN ** 2;
    const gain = variance / total;
    const surprise = values.map((value, at) => value - kept * (held[at] as number));
    for (let i = 0; i < size; i++) {
      held[i] = kept * (held[i] as number) + gain * (surprise[i] as number);
      const line = information[i] as Float64Array;
      for (let j = 0; j < size; j++) {
        line[j] = (line[j] as number) + ((surprise[i] as number) * (surprise[j] as number)) / total;
      }
    }
    variance *= 1 - gain;
  }
  const covariance = inverse(information);
  return covariance.map((line, at) => Math.sqrt(line[at] as number));
}

/** Gauss and Jordan, of a positive definite matrix. */
function inverse(matrix: readonly Float64Array[]): readonly (readonly number[])[] {
  const size = matrix.length;
  const wide = matrix.map((line, i) => [
    ...line,
    ...Array.from({ length: size }, (_, j) => (i === j ? 1 : 0)),
  ]);
  for (let pivot = 0; pivot < size; pivot++) {
    const own = wide[pivot] as number[];
    const lead = own[pivot] as number;
    for (let j = 0; j < own.length; j++) own[j] = (own[j] as number) / lead;
    for (const [i, line] of wide.entries()) {
      const factor = line[pivot] as number;
      if (i === pivot || factor === 0) continue;
      for (let j = 0; j < line.length; j++) {
        line[j] = (line[j] as number) - factor * (own[j] as number);
      }
    }
  }
  return wide.map((line) => line.slice(size));
}

test.each(["sines", "triangles"])(
  "noise of 40 N that holds together over 0.1 s lets no one tell a dashpot within 3 of 100 in 95 of 100: %s",
  (motion) => {
    const errors = leastErrors(motion);
    const relative = errors.map((error, at) => {
      const truth = trueStops.dashpot?.damping?.(knots[at % 5] as number, at < 5 ? 1 : -1) ?? 0;
      return error / truth;
    });
    // 3 in 100 hold in 95 of 100 only where the standard error is below 3/1.96 = 1.53 in 100.
    const told = relative.filter((error) => error < 0.03 / 1.96);
    expect(told.length).toBeLessThan(relative.length / 2);
    expect(Math.max(...relative)).toBeGreaterThan(0.03);
  },
);
