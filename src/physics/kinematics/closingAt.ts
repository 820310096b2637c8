/** How far the stop has closed at a wheel travel, and how fast it goes on with it. */
export interface Closing {
  /** s, mm. */
  readonly closingMm: number;
  /** ds/dz, stop per wheel. */
  readonly perMm: number;
}

/** s and ds/dz at a wheel travel z, mm, for a few questions: inner loops ask `evaluate` itself. */
export function closingAt(
  motion: { evaluate(z: number, out: Float64Array): void },
  z: number,
): Closing {
  const out = new Float64Array(3);
  motion.evaluate(z, out);
  return { closingMm: out[0], perMm: out[1] };
}
