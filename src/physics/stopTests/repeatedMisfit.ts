import type { FitRows } from "./fitRows.ts";

const binsPerStroke = 12;

/** Mean square, N², with its standard error. */
export interface RepeatedMisfit {
  readonly square: number;
  readonly standardError: number;
  /** Variance of a row's noise, N², and the rows that it was told by. */
  readonly noise: number;
  readonly rows: number;
}

/**
 * Mean square, N², of what is left of the force and comes back at the same place of every cycle: the
 * means over the cycles of a block, bin by bin along its strokes, less what chance alone leaves of such a
 * mean. Noise falls out, a law's own misfit stays. Each cycle's own mean is taken off first: there a load
 * cell that wanders shows, hardly a law. Noise counts as white and of one size.
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
  const strokes = new Map<string, BinMean[][]>();
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
        if (count > 0) means.push({ mean: sum / count - middles[unit], rows: count });
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

interface BinMean {
  readonly mean: number;
  readonly rows: number;
}

function summed(strokes: readonly (readonly (readonly BinMean[])[])[]): RepeatedMisfit {
  // What was measured once cannot be told from noise.
  const bins = strokes.flat().filter((means) => means.length > 1);
  let [spread, freedom] = [0, 0];
  const held = bins.map((means) => {
    const rows = means.reduce((sum, each) => sum + each.rows, 0);
    const mean = means.reduce((sum, each) => sum + each.rows * each.mean, 0) / rows;
    for (const each of means) spread += each.rows * (each.mean - mean) ** 2;
    freedom += means.length - 1;
    return { mean, rows };
  });
  const noise = spread / Math.max(1, freedom);
  let [total, rows, variance] = [0, 0, 0];
  for (const bin of held) {
    const square = bin.rows * bin.mean * bin.mean;
    total += square - noise;
    rows += bin.rows;
    // Of the square of a normal mean: 2·σ⁴ + 4·μ²·σ², at most 4·mean²·σ² + 2·σ⁴.
    variance += 2 * noise * noise + 4 * square * noise;
  }
  const of = Math.max(1, rows);
  return { square: Math.max(0, total / of), standardError: Math.sqrt(variance) / of, noise, rows };
}
