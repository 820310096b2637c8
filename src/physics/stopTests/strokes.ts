/** A run of a test in one direction, or a rest, with the samples `from` … `to`, both included. */
export interface Stroke {
  readonly from: number;
  readonly to: number;
  /** 1 pressing deeper, −1 coming back, 0 held. */
  readonly direction: 1 | -1 | 0;
  readonly durationS: number;
  /** Deepest less least deep, mm. */
  readonly travelMm: number;
}

/** Turns smaller than this share of the whole range of depth are none. */
const leastTurnShare = 0.004;
/** … nor are those within so many standard deviations of the depth's own noise. */
const noiseDeviations = 6;
/** A rest at a turn counts as held from this share of the longer neighbouring stroke on. */
const heldShare = 0.15;
const shortestHoldS = 0.02;
/** … and always from this on. */
const surelyHeldS = 1;

/**
 * Strokes and holds of a motion: depth (mm) in time (s, rising). A turn counts where the depth goes back
 * by more than noise; what stays about a turn for long is a hold of its own. Common practice, no source.
 */
export function strokesOf(timeS: Float64Array, depthMm: Float64Array): readonly Stroke[] {
  const count = depthMm.length;
  if (count < 2) return [];
  const [least, most] = rangeOf(depthMm);
  const band = Math.max(
    leastTurnShare * (most - least),
    noiseDeviations * noiseOf(depthMm),
    Number.MIN_VALUE,
  );
  const turns = turnsOf(depthMm, band);
  const strokes: Stroke[] = [];
  const add = (from: number, to: number, direction: Stroke["direction"]) => {
    if (to <= from) return;
    strokes.push({
      from,
      to,
      direction,
      durationS: timeS[to] - timeS[from],
      travelMm: Math.abs(depthMm[to] - depthMm[from]),
    });
  };
  /** Last sample of the hold about a turn, from there on (way 1) or back (way −1). */
  const stays = (turn: number, way: 1 | -1, end: number): number => {
    let place = turn;
    while (place !== end && Math.abs(depthMm[place + way] - depthMm[turn]) <= band) {
      place += way;
    }
    return place;
  };
  let start = 0;
  for (let index = 1; index < turns.length; index++) {
    const before = turns[index - 1];
    const turn = turns[index];
    const holdEnd = stays(before, 1, turn);
    const holdFrom = stays(turn, -1, before);
    const moves = timeS[turn] - timeS[before];
    const rests = (from: number, to: number) => {
      const time = timeS[to] - timeS[from];
      return time > Math.min(surelyHeldS, Math.max(shortestHoldS, heldShare * moves));
    };
    const runFrom = holdEnd < holdFrom && rests(before, holdEnd) ? holdEnd : before;
    const runTo = holdEnd < holdFrom && rests(holdFrom, turn) ? holdFrom : turn;
    add(start, runFrom, 0);
    const direction = depthMm[turn] > depthMm[before] ? 1 : -1;
    if (Math.abs(depthMm[runTo] - depthMm[runFrom]) <= band) {
      start = runFrom;
      continue;
    }
    add(runFrom, runTo, direction);
    start = runTo;
  }
  add(start, count - 1, 0);
  return strokes;
}

/** Places where the motion turns, first and last sample among them. */
function turnsOf(depthMm: Float64Array, band: number): readonly number[] {
  const turns = [0];
  let deepest = 0;
  let shallowest = 0;
  let direction = 0;
  for (let place = 1; place < depthMm.length; place++) {
    const depth = depthMm[place];
    if (depth > depthMm[deepest]) deepest = place;
    if (depth < depthMm[shallowest]) shallowest = place;
    if (direction <= 0 && depth > depthMm[shallowest] + band) {
      if (direction < 0) turns.push(shallowest);
      direction = 1;
      deepest = place;
    } else if (direction >= 0 && depth < depthMm[deepest] - band) {
      if (direction > 0) turns.push(deepest);
      direction = -1;
      shallowest = place;
    }
    if (direction === 1 && depth >= depthMm[deepest]) deepest = place;
    if (direction === -1 && depth <= depthMm[shallowest]) shallowest = place;
  }
  const end = direction > 0 ? deepest : direction < 0 ? shallowest : depthMm.length - 1;
  if (end > turns[turns.length - 1]) turns.push(end);
  return turns;
}

/** Standard deviation of a column's noise by the median of its second differences. */
export function noiseOf(values: Float64Array): number {
  const step = Math.max(1, Math.floor(values.length / 4000));
  const differences: number[] = [];
  for (let place = 1; place < values.length - 1; place += step) {
    differences.push(Math.abs(values[place - 1] - 2 * values[place] + values[place + 1]));
  }
  differences.sort((a, b) => a - b);
  // Median of |N(0, √6·σ)| is 0.6745·√6·σ.
  return (differences[differences.length >> 1] ?? 0) / (0.6745 * Math.sqrt(6));
}

function rangeOf(values: Float64Array): readonly [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return [least, most];
}
