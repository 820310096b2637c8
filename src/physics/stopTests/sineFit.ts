/** y = mean + cosine·cos ωt + sine·sin ωt, with the root mean square of what is left over. */
export interface SineFit {
  readonly mean: number;
  readonly cosine: number;
  readonly sine: number;
  readonly rms: number;
}

/**
 * Least squares of a sine of known circular frequency ω (rad/s) through samples from `from` to `to`
 * (excluded) of time (s) and y (any unit): the three-parameter fit of IEEE Std 1057, by its normal
 * equations with time counted from the middle. At least three samples over about a whole period.
 */
export function sineFit(
  timeS: Float64Array,
  y: Float64Array,
  from: number,
  to: number,
  omega: number,
): SineFit {
  const count = to - from;
  const middle = (timeS[from] + timeS[to - 1]) / 2;
  let c = 0;
  let s = 0;
  let cc = 0;
  let ss = 0;
  let cs = 0;
  let sumY = 0;
  let cy = 0;
  let sy = 0;
  for (let place = from; place < to; place++) {
    const angle = omega * (timeS[place] - middle);
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    const value = y[place];
    c += cosine;
    s += sine;
    cc += cosine * cosine;
    ss += sine * sine;
    cs += cosine * sine;
    sumY += value;
    cy += cosine * value;
    sy += sine * value;
  }
  const meanY = sumY / count;
  const a11 = cc - (c * c) / count;
  const a12 = cs - (c * s) / count;
  const a22 = ss - (s * s) / count;
  const b1 = cy - c * meanY;
  const b2 = sy - s * meanY;
  const determinant = a11 * a22 - a12 * a12;
  const cosine = determinant === 0 ? 0 : (b1 * a22 - b2 * a12) / determinant;
  const sine = determinant === 0 ? 0 : (b2 * a11 - b1 * a12) / determinant;
  const mean = meanY - (cosine * c + sine * s) / count;
  let squares = 0;
  for (let place = from; place < to; place++) {
    const angle = omega * (timeS[place] - middle);
    const left = y[place] - mean - cosine * Math.cos(angle) - sine * Math.sin(angle);
    squares += left * left;
  }
  return { mean, cosine, sine, rms: Math.sqrt(squares / count) };
}
