import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { paired } from "../paired.ts";
import { mean } from "../uncertainty/readingMean.ts";
import {
  type CycleFigure,
  type CyclesAnalysis,
  type Remark,
  staticSpeedMmPerS,
  type TimeDisplacementForce,
} from "./benchTest.ts";
import { type Cycle, cyclesOf, greatestSpeedIn, isWhole } from "./cycles.ts";
import { type LoopFigures, loopFigures } from "./loopFigures.ts";
import { meanLoop } from "./meanLoop.ts";
import { orientCycles } from "./orientCycles.ts";
import { timedSamples } from "./timedSamples.ts";

/** A fitted sine that leaves more than this of the amplitude is none: of a triangle it leaves 0.08. */
const greatestMisfit = 0.05;
/** Loss below 0 by more than this share of the energy in is no measurement of a stop. */
const gainTolerance = 0.02;

export interface CyclesOptions {
  /** Cycles whose greatest speed is at most this say nothing of damping, mm/s. */
  readonly staticSpeedMmPerS?: number;
  /** What the file's own numbers were multiplied by to give mm and N; 1 where absent. */
  readonly factors?: { readonly displacement: number; readonly force: number };
}

/**
 * What time–displacement–force cycles say: energy in and out, loss per cycle, loss factor
 * ΔE/(2π·U) with U = ½·k·X², equivalent viscous damping ΔE/(π·ω·X²), each the mean of the whole cycles
 * with its standard error. Sources: Rao, Mechanical Vibrations, chapter 2, on energy dissipated in viscous
 * and in hysteretic damping (from memory); the same closed forms in the tests. Cycles with missing samples, or of another stroke or period, are left out and told in
 * `remarks`. Displacement mm, force N, time s, in the order of time.
 *
 * Errors: "tooFewSamples", "timeNotRising", "noCycle", "energyGained", "columnsNotUsable".
 */
export function analyseCycles(
  given: TimeDisplacementForce,
  options: CyclesOptions = {},
): Outcome<CyclesAnalysis> {
  const samples = timedSamples(given);
  if (!samples.ok) return samples;
  const remarks: Remark[] = [...samples.value.remarks];
  const oriented = orientCycles(samples.value.samples, options.factors);
  if (!oriented.ok) return oriented;
  remarks.push(...oriented.value.remarks);
  const { timeS, displacementMm } = oriented.value.samples;
  let { forceN } = oriented.value.samples;
  const found = cyclesOf(timeS, displacementMm);
  const whole = found.filter((cycle) => isWhole(timeS, cycle));
  if (whole.length === 0) return fail("noCycle", noCycle);
  let figures = whole.map((cycle) => loopFigures(timeS, displacementMm, forceN, cycle));
  if (!oriented.value.forceSignKnown && meanOf(figures, ({ loss }) => loss) < 0) {
    forceN = forceN.map((force) => -force);
    figures = whole.map((cycle) => loopFigures(timeS, displacementMm, forceN, cycle));
    remarks.push({
      code: "forceReversed",
      sentence: [messages.fileCountsPushingForce],
    });
  }
  const kept = alike(paired(whole, figures), found.length);
  const cycles = kept.map(([cycle]) => cycle);
  const loops = kept.map(([, loop]) => loop);
  if (loops.length < found.length) remarks.push(leftOut(found.length - loops.length, found.length));
  const loss = figure(loops, (loop) => loop.loss);
  const energyIn = figure(loops, (loop) => loop.energyIn);
  if (loss.value < -gainTolerance * Math.abs(energyIn.value) - 3 * loss.standardError) {
    return fail("energyGained", [messages.byThisFileStop]);
  }
  const isSine = Math.max(...loops.map(({ sineMisfit }) => sineMisfit)) <= greatestMisfit;
  const amplitude = (loop: LoopFigures) => (isSine ? loop.amplitudeMm : loop.halfStrokeMm);
  const amplitudeMm = meanOf(loops, amplitude);
  const omega = meanOf(loops, (loop) => loop.omega);
  const greatestSpeed = isSine
    ? amplitudeMm * omega
    : Math.max(...cycles.map((cycle) => greatestSpeedIn(timeS, displacementMm, cycle)));
  const isSlow = greatestSpeed <= (options.staticSpeedMmPerS ?? staticSpeedMmPerS);
  if (!isSine) remarks.push(notASine);
  if (isSlow) remarks.push(slowCycles(greatestSpeed));
  remarks.push(...driftRemark(loops));
  const hasRate = loops.every(({ rate, forceAmplitudeN, amplitudeMm: x }) => {
    return rate * x > 0.02 * forceAmplitudeN;
  });
  return succeed({
    kind: "cycles",
    samples: timeS.length,
    cycles: loops.length,
    frequencyHz: omega / (2 * Math.PI),
    amplitudeMm,
    meanDisplacementMm: meanOf(loops, (loop) => loop.meanDisplacementMm),
    meanForceN: meanOf(loops, (loop) => loop.meanForceN),
    greatestSpeedMmPerS: greatestSpeed,
    energyInJ: figure(loops, (loop) => loop.energyIn / 1000),
    energyOutJ: figure(loops, (loop) => loop.energyOut / 1000),
    lossJ: figure(loops, (loop) => loop.loss / 1000),
    dynamicRateNPerMm: figure(loops, (loop) => loop.rate),
    lossFactor: hasRate
      ? figure(loops, (loop) => loop.loss / (Math.PI * loop.rate * amplitude(loop) ** 2))
      : null,
    equivalentDampingNsPerMm:
      isSine && !isSlow
        ? figure(loops, (loop) => loop.loss / (Math.PI * loop.omega * loop.amplitudeMm ** 2))
        : null,
    loop: meanLoop(timeS, displacementMm, forceN, cycles),
    firstAndLater: null,
    remarks,
  });
}

/** The cycles whose stroke and period are those of the middle one, within a tenth. */
function alike(
  whole: readonly (readonly [Cycle, LoopFigures])[],
  found: number,
): readonly (readonly [Cycle, LoopFigures])[] {
  if (found < 3) return whole;
  const stroke = median(whole.map(([, { halfStrokeMm }]) => halfStrokeMm));
  const omega = median(whole.map(([, loop]) => loop.omega));
  return whole.filter(
    ([, loop]) =>
      Math.abs(loop.halfStrokeMm - stroke) <= 0.1 * stroke &&
      Math.abs(loop.omega - omega) <= 0.1 * omega,
  );
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

function meanOf(loops: readonly LoopFigures[], of: (loop: LoopFigures) => number): number {
  return mean(loops.map(of));
}

function figure(loops: readonly LoopFigures[], of: (loop: LoopFigures) => number): CycleFigure {
  const value = meanOf(loops, of);
  const squares = loops.reduce((sum, loop) => sum + (of(loop) - value) ** 2, 0);
  const count = loops.length;
  return {
    value,
    standardError: count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count),
  };
}

function driftRemark(loops: readonly LoopFigures[]): Remark[] {
  const first = (loops[0] as LoopFigures).peakForceN;
  const last = (loops.at(-1) as LoopFigures).peakForceN;
  if (loops.length < 3 || Math.abs(last - first) <= 0.05 * Math.max(first, last)) return [];
  return [
    {
      code: "noticeableDrift",
      sentence: [
        messages.greatestForceWentFrom({
          first: { kind: "force", value: first },
          last: { kind: "force", value: last },
        }),
      ],
    },
  ];
}

function leftOut(count: number, found: number): Remark {
  return {
    code: "cyclesLeftOut",
    sentence: [
      messages.ofCyclesWereLeft({
        count: { kind: "count", value: count },
        found: { kind: "count", value: found },
      }),
    ],
  };
}

const noCycle = [messages.noWholeCycleOf];

const notASine: Remark = {
  code: "notASine",
  sentence: [messages.motionIsNotSine],
};

function slowCycles(speed: number): Remark {
  return {
    code: "slowCycles",
    sentence: [messages.stopNeverMovedFaster({ speed: { kind: "speed", value: speed } })],
  };
}
