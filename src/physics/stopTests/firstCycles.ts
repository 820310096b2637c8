import * as messages from "../../words/compiled/physics/stopTests.ts";
import type { Remark } from "./benchTest.ts";
import { comparedForces } from "./comparedForces.ts";
import type { CycleUnit } from "./cycleUnits.ts";
import type { Stroke } from "./strokes.ts";
import type { Samples } from "./timedSamples.ts";

export interface FirstCycles {
  /** Numbers of the strokes left out. */
  readonly strokes: ReadonlySet<number>;
  readonly cycles: number;
  readonly remarks: readonly Remark[];
}

/** A first cycle counts as harder from this share above the later ones on. */
const harder = 1.03;

/**
 * First cycles that are harder than those after them, as those of rubber and foam are on their first
 * loading (Mullins, Rubber Chem. Technol. 42 (1969) 339, from memory): a stop in use is past its first
 * loading, so they are left out. The first ramp where another follows; the first cycle of a block of three.
 */
export function firstCyclesSofter(
  samples: Samples,
  strokes: readonly Stroke[],
  units: readonly CycleUnit[],
  rampBlocks: ReadonlySet<number>,
): FirstCycles {
  const found = new Set<number>();
  const remarks: Remark[] = [];
  let cycles = 0;
  const leave = (unit: CycleUnit) => {
    for (const stroke of unit.strokes) found.add(stroke);
    cycles++;
  };
  const ramps = units.filter(({ block }) => rampBlocks.has(block));
  const rampForces = comparedForces(samples, pressingStrokes(strokes, ramps));
  const [first, ...later] = rampForces;
  if (first !== undefined && later.length > 0 && isHarder(first, later)) {
    leave(ramps[0] as CycleUnit);
    remarks.push(firstRampLeftOut(first, later));
  }
  const blocks = new Set(units.map(({ block }) => block));
  let blocksSofter = 0;
  for (const block of blocks) {
    if (rampBlocks.has(block)) continue;
    const own = units.filter((unit) => unit.block === block);
    const [begin, ...after] = comparedForces(samples, pressingStrokes(strokes, own));
    if (begin === undefined || after.length < 2 || !isHarder(begin, after)) continue;
    leave(own[0] as CycleUnit);
    blocksSofter++;
  }
  if (blocksSofter > 0) remarks.push(firstCyclesLeftOut(blocksSofter));
  return { strokes: found, cycles, remarks };
}

function isHarder(first: number, later: readonly number[]): boolean {
  return Number.isFinite(first) && first > harder * median(later);
}

/** The stroke with which each cycle presses the stop; null where none does. */
function pressingStrokes(
  strokes: readonly Stroke[],
  units: readonly CycleUnit[],
): readonly (Stroke | null)[] {
  return units.map(
    (unit) =>
      unit.strokes.map((at) => strokes[at] as Stroke).find(({ direction }) => direction === 1) ??
      null,
  );
}

function median(values: readonly number[]): number {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

function firstRampLeftOut(first: number, later: readonly number[]): Remark {
  return {
    code: "firstRampLeftOut",
    sentence: [
      messages.firstSlowRampIs({
        first: { kind: "share", value: first / median(later) - 1 },
      }),
    ],
  };
}

function firstCyclesLeftOut(blocks: number): Remark {
  return {
    code: "firstCycleLeftOut",
    sentence: [
      messages.inBlockOfCycles({
        blocks: { kind: "count", value: blocks },
        blocks2: blocks,
      }),
    ],
  };
}
