import type { FitRows } from "./fitRows.ts";

const binsPerStroke = 12;

/** Mean square, N², with its standard error. */
export interface RepeatedMisfit {
  readonly square: number;
  readonly standardError: number;
}

/**
 * Mean square, N², of what is left of the force and comes back at the same place of every cycle: the
 * means over the cycles of a block, bin by bin along its strokes, less what chance alone leaves of such a
 * mean. Noise falls out, a law's own misfit stays. Each cycle's own mean is taken off first: there a load
 * cell that wanders shows, hardly a law. The standard error holds where noise stays alike along a stroke.
 */
export function repeatedMisfit(
  { rows, usable, units }: Pick<FitRows, "rows" | "usable" | "units">,
  residualN: Float64Array,
): RepeatedMisfit {
  const unitOf = new Int32Array(1 + (rows.stroke.at(-1) ?? 0)).fill(-1);
  const turnOf = new Int32Array(unitOf.length);
  for (const [unit, { strokes }] of units.entries()) {
    for (const [turn, stroke] of strokes.entries()) {
      unitOf[stroke] = unit;
      turnOf[stroke] = turn;
    }
  }
  const middles = meansOf(units.length, rows.stroke, usable, unitOf, residualN);
  /** By block, and stroke of its cycle: of each bin, the mean of each cycle. */
  const strokes = new Map<string, number[][]>();
  let from = 0;
  while (from < rows.stroke.length) {
    const stroke = rows.stroke[from];
    let to = from;
    while (to < rows.stroke.length && rows.stroke[to] === stroke) to++;
    const unit = unitOf[stroke];
    const block = units[unit]?.block;
    if (block !== undefined) {
      const key = `${block} ${turnOf[stroke]}`;
      const bins = strokes.get(key) ?? Array.from({ length: binsPerStroke }, () => []);
      strokes.set(key, bins);
      for (const [bin, means] of bins.entries()) {
        const first = from + Math.floor((bin * (to - from)) / binsPerStroke);
        const last = from + Math.floor(((bin + 1) * (to - from)) / binsPerStroke);
        let sum = 0;
        let count = 0;
        for (let row = first; row < last; row++) {
          if (usable[row] !== 1) continue;
          sum += residualN[row];
          count++;
        }
        if (count > 0) means.push(sum / count - middles[unit]);
      }
    }
    from = to;
  }
  return summed([...strokes.values()]);
}

/** Mean of the residuals of each unit. */
function meansOf(
  count: number,
  stroke: Uint32Array,
  usable: Uint8Array,
  unitOf: Int32Array,
  residualN: Float64Array,
): Float64Array {
  const sums = new Float64Array(count);
  const rows = new Float64Array(count);
  for (let row = 0; row < stroke.length; row++) {
    const unit = unitOf[stroke[row]];
    if (unit < 0 || usable[row] !== 1) continue;
    sums[unit] = sums[unit] + residualN[row];
    rows[unit] = rows[unit] + 1;
  }
  return sums.map((sum, unit) => sum / Math.max(1, rows[unit]));
}

function summed(strokes: readonly (readonly (readonly number[])[])[]): RepeatedMisfit {
  let total = 0;
  let places = 0;
  let variance = 0;
  for (const bins of strokes) {
    let deviations = 0;
    for (const values of bins) {
      const count = values.length;
      // What was measured once cannot be told from noise.
      if (count < 2) continue;
      const mean = values.reduce((sum, value) => sum + value, 0) / count;
      const spread = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
      const chance = spread / (count - 1) / count;
      total += mean * mean - chance;
      // Of the square of a normal mean: 2·σ⁴ + 4·μ²·σ², at most 4·mean²·σ² + 2·σ⁴.
      deviations += Math.sqrt(2 * chance * chance + 4 * mean * mean * chance);
      places++;
    }
    variance += deviations * deviations;
  }
  const of = Math.max(1, places);
  return { square: Math.max(0, total / of), standardError: Math.sqrt(variance) / of };
}
