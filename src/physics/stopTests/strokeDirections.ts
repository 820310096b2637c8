/** 1 pressing, −1 coming back, by row; null unless the rows at speed run in whole strokes both ways. */
export function strokeDirections(
  depthMm: Float64Array,
  speedMmPerS: Float64Array,
  threshold: number,
): Int8Array | null {
  const directions = new Int8Array(depthMm.length);
  let moved = 0;
  let pressingLessBack = 0;
  let turns = 0;
  let before = 0;
  for (let row = 0; row < depthMm.length; row++) {
    if (Math.abs(speedMmPerS[row]) <= threshold) continue;
    const after = depthMm[Math.min(row + 1, depthMm.length - 1)];
    const direction = Math.sign(after - depthMm[Math.max(0, row - 1)]) || before;
    if (direction === 0) continue;
    directions[row] = direction;
    moved++;
    pressingLessBack += direction;
    if (before !== 0 && direction !== before) turns++;
    before = direction;
  }
  // More than a fifth of them goes the other way, and there is less than one turn in six rows.
  return 5 * Math.abs(pressingLessBack) < 3 * moved && 6 * turns < moved ? directions : null;
}

/** Speeds with the signs of their rows' directions; those of rows without one as they are. */
export function turnedAs(speedMmPerS: Float64Array, directions: Int8Array): Float64Array {
  return speedMmPerS.map((speed, row) =>
    directions[row] === 0 ? speed : Math.abs(speed) * directions[row],
  );
}
