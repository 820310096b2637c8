/** One cycle: from an upward passage of the mean displacement to the next, in time and places. */
export interface Cycle {
  readonly startS: number;
  readonly endS: number;
  /** Samples within it: from the first after its start to the last before its end, `to` excluded. */
  readonly from: number;
  readonly to: number;
}

/** Share of the half stroke by which the displacement must pass the mean: noise makes no cycle. */
const hysteresisShare = 0.3;

/**
 * Cycles of a displacement (mm) in time (s, rising). A passage is placed where the straight line through
 * the samples of its rise meets the middle of the stroke, so that noise of one sample moves it little.
 * Empty where fewer than two upward passages are found.
 */
export function cyclesOf(timeS: Float64Array, displacementMm: Float64Array): readonly Cycle[] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const displacement of displacementMm) {
    least = Math.min(least, displacement);
    most = Math.max(most, displacement);
  }
  const middle = (least + most) / 2;
  const half = (most - least) / 2;
  const passages: number[] = [];
  let below = false;
  let belowAt = 0;
  for (let place = 0; place < displacementMm.length; place++) {
    const from = displacementMm[place] - middle;
    if (from < -hysteresisShare * half) {
      below = true;
      belowAt = place;
    }
    if (below && from > hysteresisShare * half) {
      passages.push(passageTime(timeS, displacementMm, belowAt, place, middle));
      below = false;
    }
  }
  const cycles: Cycle[] = [];
  let place = 0;
  for (let index = 1; index < passages.length; index++) {
    const startS = passages[index - 1];
    const endS = passages[index];
    while (timeS[place] <= startS) place++;
    const from = place;
    while (timeS[place] < endS) place++;
    cycles.push({ startS, endS, from, to: place });
  }
  return cycles;
}

/** Where the straight line of displacement on time through the samples `from` to `to` meets the middle. */
function passageTime(
  timeS: Float64Array,
  displacementMm: Float64Array,
  from: number,
  to: number,
  middle: number,
): number {
  const count = to - from + 1;
  const origin = timeS[from];
  let meanTime = 0;
  let meanFrom = 0;
  for (let place = from; place <= to; place++) {
    meanTime += (timeS[place] - origin) / count;
    meanFrom += (displacementMm[place] - middle) / count;
  }
  let squares = 0;
  let products = 0;
  for (let place = from; place <= to; place++) {
    const time = timeS[place] - origin - meanTime;
    squares += time * time;
    products += time * (displacementMm[place] - middle - meanFrom);
  }
  return origin + meanTime - (meanFrom * squares) / products;
}

/** The cycle of the samples from one place up to another. */
export function cycleBetween(timeS: Float64Array, from: number, to: number): Cycle {
  return { startS: timeS[from], endS: timeS[to], from, to };
}

const fewestSamplesACycle = 16;
/** The speed of a motion that is no sine is looked at over this share of its cycle. */
const speedShare = 0.04;

/** Greatest speed of a cycle, mm/s, over a share of it, so that noise of single samples moves it little. */
export function greatestSpeedIn(
  timeS: Float64Array,
  displacementMm: Float64Array,
  { from, to }: Cycle,
): number {
  const apart = Math.max(2, Math.round(speedShare * (to - from)));
  let greatest = 0;
  for (let place = from; place + apart < to; place++) {
    const way = displacementMm[place + apart] - displacementMm[place];
    const time = timeS[place + apart] - timeS[place];
    greatest = Math.max(greatest, Math.abs(way) / time);
  }
  return greatest;
}

/** Enough samples, none missing: no step of time beyond three times the cycle's mean step. */
export function isWhole(timeS: Float64Array, { startS, endS, from, to }: Cycle): boolean {
  const count = to - from;
  if (count < fewestSamplesACycle) return false;
  const longest = (3 * (endS - startS)) / count;
  // The steps onto the first sample and off the last one belong to it too.
  for (let place = from; place <= to; place++) {
    if (timeS[place] - timeS[place - 1] > longest) return false;
  }
  return true;
}
