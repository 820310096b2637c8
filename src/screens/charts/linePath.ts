/** An SVG path through points already on the screen; a gap where a point is not finite. */
export function linePath(points: Iterable<readonly [number, number]>): string {
  let path = "";
  let drawing = false;
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      drawing = false;
      continue;
    }
    path += `${drawing ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`;
    drawing = true;
  }
  return path;
}

/** The area between a line and a lower one, both from left to right. */
export function areaPath(
  upper: readonly (readonly [number, number])[],
  lower: readonly (readonly [number, number])[],
): string {
  return upper.length === 0 ? "" : `${linePath([...upper, ...[...lower].reverse()])}Z`;
}
