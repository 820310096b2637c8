/**
 * Slopes at the knots of a monotone piecewise cubic (PCHIP): Fritsch & Carlson, SIAM J. Numer. Anal.
 * 17 (1980) 238, with the interior slopes of Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984)
 * 300 (weighted harmonic mean of the neighbouring secants) and three-point end slopes held within the
 * monotone region, as in SciPy's PchipInterpolator.
 *
 * `x` rises strictly, at least two knots; `y` in any unit. Returns dy/dx at each knot. Where the data
 * are monotone the cubic through them is monotone and never overshoots a knot.
 */
export function pchipSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const count = x.length;
  const width = (index: number) => x[index + 1] - x[index];
  const secant = (index: number) => (y[index + 1] - y[index]) / width(index);
  const slopes = new Float64Array(count);
  if (count === 2) return slopes.fill(secant(0));
  for (let knot = 1; knot < count - 1; knot++) {
    const before = secant(knot - 1);
    const after = secant(knot);
    if (before * after <= 0) continue;
    const weightBefore = 2 * width(knot) + width(knot - 1);
    const weightAfter = width(knot) + 2 * width(knot - 1);
    slopes[knot] = (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
  }
  slopes[0] = endSlope(width(0), width(1), secant(0), secant(1));
  slopes[count - 1] = endSlope(
    width(count - 2),
    width(count - 3),
    secant(count - 2),
    secant(count - 3),
  );
  return slopes;
}

/** Three-point end slope: never against the end secant, at most 3 times it where the data turn. */
function endSlope(width: number, nextWidth: number, secant: number, nextSecant: number): number {
  const slope = ((2 * width + nextWidth) * secant - width * nextSecant) / (width + nextWidth);
  if (Math.sign(slope) !== Math.sign(secant)) return 0;
  if (Math.sign(secant) !== Math.sign(nextSecant) && Math.abs(slope) > 3 * Math.abs(secant)) {
    return 3 * secant;
  }
  return slope;
}
