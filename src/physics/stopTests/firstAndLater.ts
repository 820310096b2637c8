import { mean } from "../uncertainty/readingMean.ts";
import type { CycleSummary } from "./benchTest.ts";
import { cycleBetween } from "./cycles.ts";
import type { CycleUnit } from "./cycleUnits.ts";
import { type LoopFigures, loopFigures } from "./loopFigures.ts";
import type { Stroke } from "./strokes.ts";
import type { Samples } from "./timedSamples.ts";

/**
 * The first cycle of a block of like cycles, and the mean of those after it, from turn to turn: by how much
 * a stop softens on its first loading. Null where no whole cycle follows a whole first one.
 */
export function firstAndLater(
  samples: Samples,
  strokes: readonly Stroke[],
  cycles: readonly CycleUnit[],
): { readonly first: CycleSummary; readonly later: CycleSummary } | null {
  const [first, ...later] = cycles.flatMap((cycle) => {
    const moving = cycle.strokes
      .map((at) => strokes[at] as Stroke)
      .filter(({ direction }) => direction !== 0);
    const [from, to] = [moving[0]?.from, moving[1]?.to];
    if (from === undefined || to === undefined) return [];
    const { timeS, displacementMm, forceN } = samples;
    return [loopFigures(timeS, displacementMm, forceN, cycleBetween(timeS, from, to))];
  });
  if (first === undefined || later.length === 0) return null;
  return { first: summaryOf([first]), later: summaryOf(later) };
}

function summaryOf(loops: readonly LoopFigures[]): CycleSummary {
  const meanOf = (of: (loop: LoopFigures) => number) => mean(loops.map(of));
  const rate = meanOf((loop) => loop.rate);
  const stiff = meanOf((loop) => Math.PI * loop.rate * loop.halfStrokeMm ** 2);
  return {
    lossJ: meanOf((loop) => loop.loss) / 1000,
    dynamicRateNPerMm: rate,
    lossFactor: rate > 0 ? meanOf((loop) => loop.loss) / stiff : null,
    peakForceN: meanOf((loop) => loop.peakForceN),
  };
}
