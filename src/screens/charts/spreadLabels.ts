/**
 * Label positions at or after the wanted ones, at least `gap` apart, pushed back where they would pass
 * `greatest`. Order is kept; equal wants stay in the order given.
 */
export function spreadLabels(
  wanted: readonly number[],
  gap: number,
  [least, greatest]: readonly [number, number],
): number[] {
  const order = wanted
    .map((want, index) => ({ want, index }))
    .sort((a, b) => a.want - b.want || a.index - b.index);
  let previous = least - gap;
  const forward = order.map(({ want }) => {
    previous = Math.max(want, previous + gap);
    return previous;
  });
  let next = greatest + gap;
  const placed = wanted.map(() => 0);
  for (let i = order.length - 1; i >= 0; i--) {
    next = Math.min(forward[i] ?? next, next - gap);
    const at = order[i]?.index;
    if (at !== undefined) placed[at] = next;
  }
  return placed;
}
