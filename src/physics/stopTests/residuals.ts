import { sampledPlaces, valuesAt } from "./sampled.ts";

/** Residuals for a plot: force of a row less the curve's at its depth, a fair sample of at most 2000. */
export interface Residuals {
  readonly depthMm: Float64Array;
  readonly residualN: Float64Array;
  /** Root mean square over all rows, N. */
  readonly rmsN: number;
  /** The greatest of all rows in size, N. */
  readonly greatestN: number;
}

const mostResiduals = 2000;

/** A sample for the plot, root mean square and greatest over all. */
export function residualsFrom(depthMm: Float64Array, residualN: Float64Array): Residuals {
  let squares = 0;
  let greatest = 0;
  for (const residual of residualN) {
    squares += residual * residual;
    greatest = Math.max(greatest, Math.abs(residual));
  }
  const places = sampledPlaces(residualN.length, mostResiduals);
  return {
    depthMm: valuesAt(depthMm, places),
    residualN: valuesAt(residualN, places),
    rmsN: Math.sqrt(squares / Math.max(1, residualN.length)),
    greatestN: greatest,
  };
}

/** What each force is beyond that of a curve at its depth, N. */
export function beyondCurve(
  depthMm: Float64Array,
  forceN: Float64Array,
  curve: { force(depth: number): number },
): Float64Array {
  return forceN.map((force, row) => force - curve.force(depthMm[row]));
}
