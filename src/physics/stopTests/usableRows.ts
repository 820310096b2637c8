import type { WorkingRows } from "./workingRows.ts";

/** Work of a force (N) along a displacement (mm) in the order of time, N·mm, by the trapezoidal rule. */
export function workOf(displacementMm: Float64Array, forceN: Float64Array): number {
  let work = 0;
  for (let row = 1; row < forceN.length; row++) {
    const step = displacementMm[row] - displacementMm[row - 1];
    work += ((forceN[row] + forceN[row - 1]) / 2) * step;
  }
  return work;
}

/** 1 for rows at hardly any force, for those after them as the stop comes back, and before them as it is pressed. */
export function freeRows(
  { forceN, stroke, speedMmPerS }: WorkingRows,
  touching: number,
): Uint8Array {
  const free = Uint8Array.from(forceN, (force) => (force > touching ? 0 : 1));
  const follows = (row: number, before: number) =>
    stroke[row] === stroke[before] && free[before] === 1;
  for (let row = 1; row < free.length; row++) {
    if (follows(row, row - 1) && speedMmPerS[row] < 0) free[row] = 1;
  }
  for (let row = free.length - 2; row >= 0; row--) {
    if (follows(row, row + 1) && speedMmPerS[row] > 0) free[row] = 1;
  }
  return free;
}

/** 1 for the rows that tell of the loss: clear of turns, pressed no deeper than the static curve, none free. */
export function usableRows(
  { clear, depthMm, stroke }: WorkingRows,
  free: Uint8Array,
  deepestMm: number,
  isLeftOut: (stroke: number) => boolean,
): Uint8Array {
  return clear.map((isClear, row) => {
    const depth = depthMm[row];
    const counts = isClear === 1 && depth > 0 && depth <= deepestMm && free[row] === 0;
    return counts && !isLeftOut(stroke[row]) ? 1 : 0;
  });
}

/** How many rows go deeper than this, besides those of slow strokes. */
export function rowsDeeper(
  { depthMm, stroke }: WorkingRows,
  deepestMm: number,
  isSlow: (stroke: number) => boolean,
): number {
  let deeper = 0;
  for (let row = 0; row < depthMm.length; row++) {
    if (depthMm[row] > deepestMm && !isSlow(stroke[row])) deeper++;
  }
  return deeper;
}
