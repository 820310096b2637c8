/** Speeds below this, mm/s, say nothing of a column of speed. */
const leastSpeed = 2;

/** The way that depth over time gives over that which a column of speed tells, of the rows that move; NaN without any. */
export function movedByTold(
  timeS: Float64Array,
  displacementMm: Float64Array,
  speedMmPerS: Float64Array,
): number {
  let moved = 0;
  let told = 0;
  for (let row = 1; row < timeS.length; row++) {
    const dt = timeS[row] - timeS[row - 1];
    const speed = Math.abs(speedMmPerS[row] + speedMmPerS[row - 1]) / 2;
    if (!(dt > 0) || speed < leastSpeed) continue;
    told += speed * dt;
    moved += Math.abs(displacementMm[row] - displacementMm[row - 1]);
  }
  return told > 0 ? moved / told : Number.NaN;
}
