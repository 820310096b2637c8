/** a − b, place by place. */
export function minus(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, place) => value - b[place]);
}

/** Change from one to the other per unit, place by place. */
export function slopesBetween(from: Float64Array, to: Float64Array, by: number): Float64Array {
  return from.map((value, place) => (to[place] - value) / by);
}

/** Is every number, of whatever sign, at most so many times its doubt? */
export function areWithin(numbers: Float64Array, doubts: Float64Array, times: number): boolean {
  return numbers.every((value, place) => Math.abs(value) <= times * doubts[place]);
}

/**
 * Slopes by central differences over ±`step`. Where one side is NaN the other is taken alone; where
 * both are, 0.
 */
export function centralSlopes(
  below: Float64Array,
  middle: Float64Array,
  above: Float64Array,
  step: number,
): Float64Array {
  return middle.map((at, place) => {
    const [up, down] = [above[place], below[place]];
    const slope = (up - down) / (2 * step);
    if (Number.isFinite(slope)) return slope;
    const oneSided = Number.isFinite(up) ? (up - at) / step : (at - down) / step;
    return Number.isFinite(oneSided) ? oneSided : 0;
  });
}

/** One reading: the slopes of all results with it, one each, and its u. */
export interface SlopesOfReading {
  readonly slopes: Float64Array;
  readonly uncertainty: number;
}

/** u of each result, √Σ(slope·u)². Source: JCGM 100:2008, 5.1.2. */
export function uncertaintiesOf(inputs: readonly SlopesOfReading[], count: number): Float64Array {
  return new Float64Array(count).map((_, result) =>
    Math.hypot(...inputs.map(({ slopes, uncertainty }) => slopes[result] * uncertainty)),
  );
}

/** Covariance of two results, Σ(slope·slope·u²). Source: JCGM 100:2008, F.1.2.3. */
export function covarianceOf(
  inputs: readonly SlopesOfReading[],
  row: number,
  column: number,
): number {
  return inputs.reduce(
    (sum, { slopes, uncertainty }) => sum + slopes[row] * slopes[column] * uncertainty ** 2,
    0,
  );
}

/** Square roots of a covariance's diagonal. */
export function doubtsOf(covariance: readonly Float64Array[]): Float64Array {
  return Float64Array.from(covariance, (row, place) => Math.sqrt(row[place]));
}

/** The numbers at these places. */
export function numbersAt(numbers: Float64Array, places: readonly number[]): Float64Array {
  return Float64Array.from(places, (place) => numbers[place]);
}
