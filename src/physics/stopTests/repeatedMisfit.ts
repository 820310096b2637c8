import type { FitRows } from "./fitRows.ts";

const binsPerStroke = 12;

/**
 * Mean square, N², of what is left of the force and comes back at the same place of every cycle: the
 * means over the cycles of a block, bin by bin along its strokes, less what chance alone leaves of such a
 * mean. Noise falls out, a law's own misfit stays.
 */
export function repeatedMisfit(
  { rows, usable, units }: Pick<FitRows, "rows" | "usable" | "units">,
  residualN: Float64Array,
): number {
  const cycleOf = new Map<number, { readonly block: number; readonly turn: number }>();
  for (const { block, strokes } of units) {
    for (const [turn, stroke] of strokes.entries()) cycleOf.set(stroke, { block, turn });
  }
  /** By block, stroke of its cycle and bin: the mean of each cycle. */
  const means = new Map<string, number[]>();
  let from = 0;
  while (from < rows.stroke.length) {
    const stroke = rows.stroke[from] as number;
    let to = from;
    while (to < rows.stroke.length && rows.stroke[to] === stroke) to++;
    const cycle = cycleOf.get(stroke);
    for (let bin = 0; cycle !== undefined && bin < binsPerStroke; bin++) {
      const first = from + Math.floor((bin * (to - from)) / binsPerStroke);
      const last = from + Math.floor(((bin + 1) * (to - from)) / binsPerStroke);
      let sum = 0;
      let count = 0;
      for (let row = first; row < last; row++) {
        if (usable[row] !== 1) continue;
        sum += residualN[row] as number;
        count++;
      }
      if (count === 0) continue;
      const key = `${cycle.block} ${cycle.turn} ${bin}`;
      means.set(key, [...(means.get(key) ?? []), sum / count]);
    }
    from = to;
  }
  let total = 0;
  let places = 0;
  for (const values of means.values()) {
    const count = values.length;
    // What was measured once cannot be told from noise.
    if (count < 2) continue;
    const mean = values.reduce((sum, value) => sum + value, 0) / count;
    const spread = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    total += mean * mean - spread / (count - 1) / count;
    places++;
  }
  return Math.max(0, total / Math.max(1, places));
}
