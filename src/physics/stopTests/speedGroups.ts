/** Speeds within this ratio of a neighbour are one speed of the test. */
const neighbourRatio = 1.08;
/** A run of speeds wider than this was swept, and is cut into parts no wider. */
const widestRatio = 1.3;
const mostGroups = 12;

/**
 * The distinct speeds of a test: runs of neighbouring magnitudes; a sweep is cut into parts of at most
 * 1 : 1.3. Common practice, no source.
 */
export interface SpeedGroups {
  readonly count: number;
  /** The group of a speed's magnitude, mm/s, 0 … count − 1, slowest first. */
  groupOf(magnitude: number): number;
}

/** `magnitudes` above 0, mm/s, in any order, at least one. */
export function speedGroups(magnitudes: Float64Array): SpeedGroups {
  const sorted = magnitudes.map(Math.log).sort();
  const gap = Math.log(neighbourRatio);
  const widest = Math.log(widestRatio);
  let bounds: number[] = [];
  let start = sorted[0];
  for (let place = 1; place <= sorted.length; place++) {
    const before = sorted[place - 1];
    const here = sorted[place] ?? Number.POSITIVE_INFINITY;
    if (here - before <= gap) continue;
    const parts = Math.ceil((before - start) / widest);
    for (let part = 1; part < parts; part++) bounds.push(start + (part * (before - start)) / parts);
    if (place < sorted.length) bounds.push((before + here) / 2);
    start = here;
  }
  if (bounds.length >= mostGroups) {
    const from = sorted[0];
    const width = (sorted[sorted.length - 1] - from) / mostGroups;
    bounds = Array.from({ length: mostGroups - 1 }, (_, index) => from + (index + 1) * width);
  }
  const speeds = bounds.map(Math.exp);
  return {
    count: bounds.length + 1,
    groupOf: (magnitude) => {
      let group = 0;
      while (speeds[group] < magnitude) group++;
      return group;
    },
  };
}
