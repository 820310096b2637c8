import type { Stroke } from "./strokes.ts";
import type { Samples } from "./timedSamples.ts";

/** Force is compared at this share of the depth that all reach. */
const comparedAt = 0.8;

/** Mean force of each stroke as it passes one depth that all of them reach; NaN where there is no stroke. */
export function comparedForces(
  { displacementMm, forceN }: Samples,
  pressing: readonly (Stroke | null)[],
): readonly number[] {
  const known = pressing.filter((stroke) => stroke !== null);
  if (known.length === 0) return [];
  const from = Math.max(...known.map((stroke) => displacementMm[stroke.from]));
  const to = Math.min(...known.map((stroke) => displacementMm[stroke.to]));
  const depth = from + comparedAt * (to - from);
  return pressing.map((stroke) => {
    if (stroke === null) return Number.NaN;
    const near = 0.03 * (to - from);
    let sum = 0;
    let count = 0;
    for (let row = stroke.from; row <= stroke.to; row++) {
      if (Math.abs(displacementMm[row] - depth) > near) continue;
      sum += forceN[row];
      count++;
    }
    return sum / count;
  });
}
