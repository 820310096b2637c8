import { LocalCubic, type LocalFit } from "./localCubic.ts";
import type { Stroke } from "./strokes.ts";

/**
 * A test thinned to what a fit needs, in the order of time: each stroke by some hundred rows, each row
 * the local cubic of its surroundings. All of one length.
 */
export interface WorkingRows {
  readonly timeS: Float64Array;
  readonly depthMm: Float64Array;
  /** By the local cubic, mm/s, positive while pressed deeper. */
  readonly speedMmPerS: Float64Array;
  readonly forceN: Float64Array;
  /** N/s. */
  readonly forceRate: Float64Array;
  /** The stroke of each row, as numbered in the list of strokes. */
  readonly stroke: Uint32Array;
  /** 1 where the samples around the row lie within its stroke: at a turn they mix two directions. */
  readonly clear: Uint8Array;
}

const mostRows = 60_000;
const [fewestAStroke, mostAStroke] = [30, 200] as const;
/** Windows of a stroke: each is about this share of its samples, at least 5 samples. */
const windowsPerStroke = 25;
const leastHalfWindow = 2;

export function workingRows(
  timeS: Float64Array,
  depthMm: Float64Array,
  forceN: Float64Array,
  strokes: readonly Stroke[],
): WorkingRows {
  const each = Math.max(
    fewestAStroke,
    Math.min(mostAStroke, Math.floor(mostRows / Math.max(1, strokes.length))),
  );
  const places: number[] = [];
  const owners: number[] = [];
  for (const [index, { from, to }] of strokes.entries()) {
    const samples = to - from;
    const rows = Math.min(samples, each);
    for (let row = 0; row < rows; row++) {
      places.push(from + Math.floor((row * samples) / rows));
      owners.push(index);
    }
  }
  const count = places.length;
  const rows = {
    timeS: new Float64Array(count),
    depthMm: new Float64Array(count),
    speedMmPerS: new Float64Array(count),
    forceN: new Float64Array(count),
    forceRate: new Float64Array(count),
    stroke: Uint32Array.from(owners),
    clear: new Uint8Array(count),
  };
  const cubic = new LocalCubic();
  const fit: LocalFit = { x: 0, xSlope: 0, y: 0, ySlope: 0 };
  for (let row = 0; row < count; row++) {
    const { from, to } = strokes[owners[row]];
    const place = places[row];
    const half = Math.max(leastHalfWindow, Math.floor((to - from) / windowsPerStroke / 2));
    const first = Math.max(0, place - half);
    const last = Math.min(timeS.length - 1, place + half);
    cubic.fit(timeS, depthMm, forceN, first, last, timeS[place], fit);
    rows.timeS[row] = timeS[place];
    rows.depthMm[row] = fit.x;
    rows.speedMmPerS[row] = fit.xSlope;
    rows.forceN[row] = fit.y;
    rows.forceRate[row] = fit.ySlope;
    const longest = (3 * (timeS[to] - timeS[from])) / (to - from);
    const whole = timeS[last] - timeS[first] <= longest * (last - first);
    rows.clear[row] = first >= from && last <= to && whole ? 1 : 0;
  }
  return rows;
}
