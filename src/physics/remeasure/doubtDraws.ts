import { RandomSource } from "../uncertainty/randomSource.ts";

const seed = 20_080_101;

/** Adds slope × (rectangular ± halfWidth + normal) from the streams of this name. */
export function addDoubt(
  out: Float64Array,
  name: string,
  slope: number,
  halfWidth: number,
  standardError: number,
): void {
  const part = new Float64Array(out.length);
  if (halfWidth > 0) RandomSource.stream(seed, name).addRectangular(part, halfWidth);
  if (standardError > 0)
    RandomSource.stream(seed, `${name} scatter`).addNormal(part, standardError);
  for (let index = 0; index < out.length; index++) {
    out[index] += slope * part[index];
  }
}

export function halfWidthOf(sorted: Float64Array): number {
  return (percentile(sorted, 0.975) - percentile(sorted, 0.025)) / 2;
}

/** Between two ranks in proportion. */
export function percentile(sorted: Float64Array, probability: number): number {
  const place = probability * (sorted.length - 1);
  const rank = Math.floor(place);
  const below = sorted[rank];
  return below + (place - rank) * ((sorted[rank + 1] ?? below) - below);
}

/** Share of the draws that leave a figure of this middle at 0 or above. */
export function keptShare(draws: Float64Array, middle: number): number {
  let kept = 0;
  for (const doubt of draws) if (middle + doubt >= 0) kept++;
  return kept / draws.length;
}

/** Of each shift of a middle: 1 from `surely` on, −1 up to `hardly`, 0 between them. */
export function decidedBy(
  shift: Float64Array,
  middle: number,
  surely: number,
  hardly: number,
): Int8Array {
  const state = new Int8Array(shift.length);
  for (let draw = 0; draw < shift.length; draw++) {
    const moved = middle + shift[draw];
    if (moved >= surely) state[draw] = 1;
    else if (moved <= hardly) state[draw] = -1;
  }
  return state;
}
