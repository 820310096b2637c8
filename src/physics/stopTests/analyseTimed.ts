import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { StopCurve } from "../stop/stopCurve.ts";
import { analyseCycles } from "./analyseCycles.ts";
import {
  type CyclesAnalysis,
  type Remark,
  type SpeedSeries,
  type StaticCurve,
  staticSpeedMmPerS,
  type TimeDisplacementForce,
  type TimedAnalysis,
} from "./benchTest.ts";
import { type CycleUnit, cycleUnits } from "./cycleUnits.ts";
import { firstAndLater } from "./firstAndLater.ts";
import { firstCyclesSofter } from "./firstCycles.ts";
import { withoutDrift } from "./forceDrift.ts";
import { lossNotTold } from "./foundStop.ts";
import { levelMeans } from "./levelMeans.ts";
import { lossFit } from "./lossFit.ts";
import { orientCycles } from "./orientCycles.ts";
import { rampStrokes } from "./rampStrokes.ts";
import { sampledPlaces, valuesAt } from "./sampled.ts";
import { smoothedLevels } from "./smoothedLevels.ts";
import { soundRows, spoiltRows } from "./spoiltRows.ts";
import { curveThrough, staticCurve } from "./staticCurve.ts";
import type { StopLoss } from "./stopLoss.ts";
import { noiseOf, type Stroke, strokesOf } from "./strokes.ts";
import { type Samples, timedSamples } from "./timedSamples.ts";
import { freeRows, rowsDeeper, usableRows, workOf } from "./usableRows.ts";
import { workingRows } from "./workingRows.ts";
import { zeroOfTest } from "./zeroOfTest.ts";

export interface TimedOptions {
  readonly staticSpeedMmPerS?: number;
  /** What the file's own numbers were multiplied by to give mm and N; 1 where absent. */
  readonly factors?: { readonly displacement: number; readonly force: number };
}

/** Share of the greatest force up to which a stop counts as hardly touched. */
const touchingShare = 0.005;
/** … and within so many standard deviations of the noise that is left of it. */
const touchingDeviations = 4;
const mostSeriesPoints = 500;

/**
 * What a record of time, depth and force says of a stop, with what was put right told in `remarks`: its
 * static curve from the slow ramp alone, loss and damping from the ramp and the cycles together
 * (`lossFit`), loops of each block of cycles. Displacement mm, force N, time s, in the order of time.
 *
 * Errors of the whole: those of `timedSamples` and `orientCycles`, "depthNotTold"; where there is neither
 * a ramp nor a cycle, that of `analyseCycles`. What only curve or loss lacks is the fault of that part.
 */
export function analyseTimed(
  given: TimeDisplacementForce,
  options: TimedOptions = {},
): Outcome<TimedAnalysis> {
  const timed = timedSamples(given);
  if (!timed.ok) return timed;
  const remarks: Remark[] = [...timed.value.remarks];
  const sound = soundSamples(timed.value.samples, remarks);
  const oriented = orientCycles(sound, options.factors);
  if (!oriented.ok) return oriented;
  remarks.push(...oriented.value.remarks);
  const threshold = options.staticSpeedMmPerS ?? staticSpeedMmPerS;
  const drift = withoutDrift(
    forceTurnedByLoss(oriented.value.samples, oriented.value.forceSignKnown),
  );
  remarks.push(...drift.remarks);
  const turned = drift.samples;
  const strokes = strokesOf(turned.timeS, turned.displacementMm);
  const range = rangeOf(turned.displacementMm);
  const ramp = rampStrokes(strokes, range[1] - range[0], threshold);
  remarks.push(...ramp.remarks);
  const units = cycleUnits(strokes);
  const rampBlocks = blocksOf(ramp.strokes, units);
  const first = firstCyclesSofter(turned, strokes, units, rampBlocks);
  remarks.push(...first.remarks);
  const still = rowsOfStrokes(
    turned,
    ramp.strokes.filter((stroke) => !first.strokes.has(stroke)).map((at) => strokes[at] as Stroke),
  );
  const zero = zeroOfTest(
    still.displacementMm.length === 0 ? [] : levelMeans(still.displacementMm, still.forceN),
  );
  if (!zero.ok) return zero;
  remarks.push(...zero.value.remarks);
  const zeroed = (samples: Samples): Samples => ({
    timeS: samples.timeS,
    displacementMm: samples.displacementMm.map((depth) => depth - zero.value.depthMm),
    forceN: samples.forceN.map((force) => force - zero.value.forceN),
  });
  const samples = zeroed(turned);
  const slow = zeroed(still);
  const curve = curveOf(slow, remarks);
  const atSpeed = units.filter(({ block }) => !rampBlocks.has(block));
  const blocks = loopsOf(samples, strokes, atSpeed, first.strokes, threshold);
  const loss = curve.ok
    ? lossOf(samples, strokes, units, rampBlocks, first.strokes, curve.value, remarks)
    : curve;
  if (!curve.ok && blocks.length === 0) {
    const cycles = analyseCycles({ kind: "cycles", ...samples }, options);
    if (!cycles.ok) return cycles;
  }
  return succeed({
    kind: "timed",
    samples: given.timeS.length,
    staticSpeedMmPerS: threshold,
    speeds: seriesOf(slow, samples, strokes, atSpeed),
    depthRangeMm: rangeOf(samples.displacementMm),
    staticCurve: curve.ok ? succeed(curve.value.found) : curve,
    loss,
    blocks,
    leftOut: { rows: given.timeS.length - samples.timeS.length, cycles: first.cycles },
    remarks: withoutRepeats([...remarks, ...blocks.flatMap((block) => block.remarks)]),
  });
}

function soundSamples(samples: Samples, remarks: Remark[]): Samples {
  const spoilt = spoiltRows({ depthMm: samples.displacementMm, forceN: samples.forceN });
  remarks.push(...spoilt.remarks);
  return {
    timeS: soundRows(samples.timeS, spoilt),
    displacementMm: soundRows(samples.displacementMm, spoilt),
    forceN: soundRows(samples.forceN, spoilt),
  };
}

/** A force whose sign nothing else tells takes the one by which the motion loses energy. */
function forceTurnedByLoss(samples: Samples, known: boolean): Samples {
  if (known) return samples;
  const { displacementMm, forceN } = samples;
  return workOf(displacementMm, forceN) < 0
    ? { ...samples, forceN: forceN.map((force) => -force) }
    : samples;
}

function blocksOf(strokes: readonly number[], units: readonly CycleUnit[]): ReadonlySet<number> {
  const wanted = new Set(strokes);
  return new Set(
    units.filter((unit) => unit.strokes.some((at) => wanted.has(at))).map(({ block }) => block),
  );
}

interface Curve {
  readonly found: StaticCurve;
  readonly curve: StopCurve;
  readonly deepestMm: number;
}

function curveOf(slow: Samples, remarks: Remark[]): Outcome<Curve> {
  if (slow.timeS.length === 0) return fail("noRamp", noRamp);
  const found = staticCurve(slow.displacementMm, slow.forceN, smoothedLevels);
  if (!found.ok) return found;
  remarks.push(...found.value.remarks);
  const curve = curveThrough(found.value.curve.points);
  const deepestMm = found.value.curve.points.at(-1)?.depthMm ?? 0;
  if (curve === null) return fail("noRamp", noRamp);
  return succeed({ found: found.value.curve, curve, deepestMm });
}

function lossOf(
  samples: Samples,
  strokes: readonly Stroke[],
  units: readonly CycleUnit[],
  rampBlocks: ReadonlySet<number>,
  leftOut: ReadonlySet<number>,
  { curve, deepestMm }: Curve,
  remarks: Remark[],
): Outcome<StopLoss> {
  if (units.every(({ block }) => rampBlocks.has(block))) {
    return fail("staticRowsOnly", staticOnly);
  }
  const rows = workingRows(samples.timeS, samples.displacementMm, samples.forceN, strokes);
  // Beside a force that is held at 0 as the stop lifts off, noise must not choose which rows count.
  const touching = Math.max(
    touchingShare * curve.force(deepestMm),
    touchingDeviations * noiseOf(rows.forceN),
  );
  const free = freeRows(rows, touching);
  const slowStrokes = new Set(
    units.filter(({ block }) => rampBlocks.has(block)).flatMap((unit) => unit.strokes),
  );
  const isLeftOut = (stroke: number) => leftOut.has(stroke);
  const usable = usableRows(rows, free, deepestMm, isLeftOut);
  const deeper = rowsDeeper(rows, deepestMm, (stroke) => slowStrokes.has(stroke));
  const loss = lossFit({ rows, usable, units, rampBlocks, curve, deepestMm });
  if (loss === null) return fail("staticRowsOnly", staticOnly);
  if (deeper > 0.01 * rows.depthMm.length) {
    remarks.push({
      code: "deeperThanStatic",
      sentence: [
        messages.cyclesGoDeeperThan({
          deepestMm: { kind: "length", value: deepestMm },
        }),
      ],
    });
  }
  remarks.push(isTold(loss) ? partsChosen(loss) : lossNotTold);
  return succeed(isTold(loss) ? loss : withoutLoss(loss));
}

/** Some part stands above its own doubt, or all of them together do. */
function isTold({ restLoss, fading, whole, damping }: StopLoss): boolean {
  return [
    restLoss,
    fading,
    whole,
    ...damping.flatMap((row) => [row.compressing, row.rebounding]),
  ].some(({ value, doubt }) => value > doubt);
}

function withoutLoss(loss: StopLoss): StopLoss {
  return {
    ...loss,
    staticShare: { ...loss.staticShare, value: 1 },
    restLoss: { ...loss.restLoss, value: 0 },
    branches: [],
    damping: [],
    draws: [],
  };
}

function loopsOf(
  samples: Samples,
  strokes: readonly Stroke[],
  units: readonly CycleUnit[],
  leftOut: ReadonlySet<number>,
  staticSpeed: number,
): readonly CyclesAnalysis[] {
  const byBlock = new Map<number, CycleUnit[]>();
  for (const unit of units) byBlock.set(unit.block, [...(byBlock.get(unit.block) ?? []), unit]);
  const found: CyclesAnalysis[] = [];
  for (const cycles of byBlock.values()) {
    const whole = cycles.filter((unit) => !unit.strokes.some((at) => leftOut.has(at)));
    const moving = whole.flatMap((unit) =>
      unit.strokes.map((at) => strokes[at] as Stroke).filter(({ direction }) => direction !== 0),
    );
    const from = moving[0]?.from;
    const to = moving.at(-1)?.to;
    if (moving.length < 3 || from === undefined || to === undefined) continue;
    const loops = analyseCycles(
      {
        kind: "cycles",
        timeS: samples.timeS.subarray(from, to + 1),
        displacementMm: samples.displacementMm.subarray(from, to + 1),
        forceN: samples.forceN.subarray(from, to + 1),
      },
      { staticSpeedMmPerS: staticSpeed },
    );
    if (!loops.ok) continue;
    found.push({ ...loops.value, firstAndLater: firstAndLater(samples, strokes, cycles) });
  }
  return found;
}

function rowsOfStrokes(samples: Samples, strokes: readonly Stroke[]): Samples {
  const parts = (values: Float64Array) => {
    const taken = new Float64Array(strokes.reduce((sum, { from, to }) => sum + to - from, 0));
    let at = 0;
    for (const { from, to } of strokes) {
      taken.set(values.subarray(from, to), at);
      at += to - from;
    }
    return taken;
  };
  return {
    timeS: parts(samples.timeS),
    displacementMm: parts(samples.displacementMm),
    forceN: parts(samples.forceN),
  };
}

function seriesOf(
  slow: Samples,
  samples: Samples,
  strokes: readonly Stroke[],
  units: readonly CycleUnit[],
): readonly SpeedSeries[] {
  const series: SpeedSeries[] = [];
  const add = (rows: Samples, speedMmPerS: number) => {
    const places = sampledPlaces(rows.timeS.length, mostSeriesPoints);
    series.push({
      speedMmPerS,
      rows: rows.timeS.length,
      depthMm: valuesAt(rows.displacementMm, places),
      forceN: valuesAt(rows.forceN, places),
    });
  };
  if (slow.timeS.length > 0) add(slow, 0);
  for (const direction of [1, -1] as const) {
    const byBlock = new Map<number, Stroke[]>();
    for (const { block, strokes: own } of units) {
      const moving = own
        .map((at) => strokes[at] as Stroke)
        .filter((stroke) => stroke.direction === direction);
      byBlock.set(block, [...(byBlock.get(block) ?? []), ...moving]);
    }
    for (const moving of byBlock.values()) {
      const travel = moving.reduce((sum, stroke) => sum + stroke.travelMm, 0);
      const time = moving.reduce((sum, stroke) => sum + stroke.durationS, 0);
      if (time > 0) add(rowsOfStrokes(samples, moving), (direction * travel) / time);
    }
  }
  return series;
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

function withoutRepeats(remarks: readonly Remark[]): readonly Remark[] {
  const texts = remarks.map(({ sentence }) => JSON.stringify(sentence));
  return remarks.filter((_, place) => texts.indexOf(texts[place] as string) === place);
}

function partsChosen({ fastestMmPerS }: StopLoss): Remark {
  return {
    code: "partsChosen",
    sentence: [
      messages.partOfLossStays({
        fastestMmPerS: { kind: "speed", value: fastestMmPerS },
      }),
    ],
  };
}

const noRamp = [messages.noSlowRampWas];
const staticOnly = [messages.everyPartOfThis];
