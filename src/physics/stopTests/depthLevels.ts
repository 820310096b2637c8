/** How a test's depths fall into levels: rows of one level are taken together. */
export interface DepthLevels {
  readonly count: number;
  /** The level of a depth in mm, 0 … count − 1; depths beyond the ends belong to the end levels. */
  levelOf(depthMm: number): number;
}

/** Most levels, and so most points of a curve. */
const mostLevels = 40;
/** Fewest rows wanted in a level of a test that sweeps the depth. */
const rowsPerLevel = 6;

/**
 * Levels of a test's depths, mm (finite, any order, at least one). A test that holds a few depths falls
 * into those: runs of depths between gaps that are wide against the runs themselves. One that sweeps is
 * cut into equal widths, at most 40, at least 6 rows each on average. Common practice, no source.
 */
export function depthLevels(depthsMm: Float64Array): DepthLevels {
  const sorted = depthsMm.slice().sort();
  return heldLevels(sorted) ?? sweptLevels(sorted);
}

function heldLevels(sorted: Float64Array): DepthLevels | null {
  const first = sorted[0];
  const last = sorted[sorted.length - 1];
  const gap = Math.max((last - first) / 100, 1e-9);
  const bounds: number[] = [];
  let widest = 0;
  let narrowest = Number.POSITIVE_INFINITY;
  let start = first;
  for (let place = 1; place <= sorted.length; place++) {
    const before = sorted[place - 1];
    const here = sorted[place] ?? Number.POSITIVE_INFINITY;
    if (here - before <= gap) continue;
    widest = Math.max(widest, before - start);
    if (place === sorted.length) break;
    narrowest = Math.min(narrowest, here - before);
    bounds.push((before + here) / 2);
    if (bounds.length >= mostLevels) return null;
    start = here;
  }
  if (bounds.length === 0 ? last - first > gap : widest > narrowest / 2) return null;
  return {
    count: bounds.length + 1,
    levelOf: (depth) => {
      let low = 0;
      let high = bounds.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (bounds[middle] < depth) low = middle + 1;
        else high = middle;
      }
      return low;
    },
  };
}

function sweptLevels(sorted: Float64Array): DepthLevels {
  const first = sorted[0];
  const range = sorted[sorted.length - 1] - first;
  const count = Math.min(mostLevels, Math.max(2, Math.floor(sorted.length / rowsPerLevel)));
  return {
    count,
    levelOf: (depth) =>
      Math.min(count - 1, Math.max(0, Math.floor((count * (depth - first)) / range))),
  };
}
