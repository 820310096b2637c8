import type { CurvePoint, DampingPoint } from "../../physics/fitment.ts";
import { stopCurve } from "../../physics/stop/index.ts";
import {
  type CycleSummary,
  type CyclesAnalysis,
  foundStop,
  type Remark,
  type StopLoss,
  type TestAnalysis,
  testDoubt,
} from "../../physics/stopTests/index.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { newId } from "../../records/check/storedCheck.ts";
import {
  type PackCycle,
  type PackCycles,
  type PackLoss,
  type PackStop,
  type PackTest,
  packBounds,
  type TestConditions,
} from "../../records/pack/pack.ts";
import type { TestImport } from "../../records/testRows/testFile.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { worded } from "../../saying/texts.ts";

function rounded(value: number): number {
  return Number(value.toPrecision(6));
}

function evenly<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, index) => items[Math.round((index * (items.length - 1)) / (most - 1))] as Item,
  );
}

/** A fair sample of the rows of each speed, [mm, mm/s, N]. */
function sampleOf({ speeds }: TestAnalysis): [number, number, number][] {
  const most = Math.max(2, Math.floor(packBounds.testPoints / 2 / Math.max(1, speeds.length)));
  return speeds.flatMap(({ speedMmPerS, depthMm, forceN }) => {
    const places = evenly([...depthMm.keys()], most);
    return places.map((place): [number, number, number] => [
      rounded(depthMm[place] ?? 0),
      rounded(speedMmPerS),
      rounded(forceN[place] ?? 0),
    ]);
  });
}

/** What was recognised in a file and in its rows, each said once. */
export function remarksOf({ file, analysis }: TestImport): readonly Remark[] {
  const all = [
    ...file.remarks,
    ...analysis.remarks,
    ...(analysis.kind === "rows" && analysis.damping.ok ? analysis.damping.value.remarks : []),
  ];
  const texts = all.map(({ sentence }) => inModelUnits(sentence));
  return all.filter((_, index) => texts.indexOf(texts[index] ?? "") === index);
}

/** Points of a kept loop: enough to draw it. */
const loopPoints = 120;
/** A 95 % ± over the standard error that a pack holds. */
const coverage = 1.96;

function cycleOf(cycle: CycleSummary): PackCycle {
  return {
    lossJ: rounded(cycle.lossJ),
    dynamicRateNPerMm: rounded(cycle.dynamicRateNPerMm),
    lossFactor: cycle.lossFactor && rounded(cycle.lossFactor),
    peakForceN: rounded(cycle.peakForceN),
  };
}

function cyclesOf(block: CyclesAnalysis): PackCycles {
  const points = Array.from(
    block.loop.displacementMm,
    (mm, index) => [rounded(mm), rounded(block.loop.forceN[index] ?? 0)] as const,
  );
  return {
    count: block.cycles,
    frequencyHz: rounded(block.frequencyHz),
    amplitudeMm: rounded(block.amplitudeMm),
    energyInJ: rounded(block.energyInJ.value),
    energyOutJ: rounded(block.energyOutJ.value),
    lossJ: rounded(block.lossJ.value),
    dynamicRateNPerMm: rounded(block.dynamicRateNPerMm.value),
    lossFactor: block.lossFactor && rounded(block.lossFactor.value),
    equivalentDampingNsPerMm:
      block.equivalentDampingNsPerMm && rounded(block.equivalentDampingNsPerMm.value),
    meanDepthMm: rounded(block.meanDisplacementMm),
    greatestSpeedMmPerS: rounded(block.greatestSpeedMmPerS),
    ...(block.firstAndLater && {
      first: cycleOf(block.firstAndLater.first),
      later: cycleOf(block.firstAndLater.later),
    }),
    loop: evenly(points, loopPoints),
  };
}

function lossOf({ staticShare, restLoss, branches, ...loss }: StopLoss): PackLoss {
  return {
    staticShare: [rounded(staticShare.value), rounded(staticShare.doubt)],
    restLoss: [rounded(restLoss.value), rounded(restLoss.doubt)],
    branches: branches.map(({ tauS, share }) => [tauS, rounded(share.value), rounded(share.doubt)]),
    dampingDoubt: rounded(loss.dampingDoubt),
    fastestMmPerS: rounded(loss.fastestMmPerS),
    misfitN: rounded(loss.misfitN),
  };
}

/** Points of the residuals that are kept: enough to see a bend. */
const residualPoints = 300;

function residualsOf({ residuals }: StopLoss): NonNullable<PackTest["residuals"]> {
  const points = Array.from(
    residuals.depthMm,
    (mm, index) => [rounded(mm), rounded(residuals.residualN[index] ?? 0)] as const,
  );
  return evenly(points, residualPoints);
}

function dampingOf(analysis: TestAnalysis): PackTest["damping"] {
  if (analysis.kind === "rows") {
    const tested = (value: { coefficient: number; standardError: number } | null) =>
      value && ([rounded(value.coefficient), rounded(value.standardError)] as const);
    return analysis.damping.ok
      ? analysis.damping.value.rows.slice(0, packBounds.testPoints).map((row) => ({
          depthMm: rounded(row.depthMm),
          compressing: tested(row.compressing),
          rebounding: tested(row.rebounding),
        }))
      : undefined;
  }
  if (!analysis.loss.ok || analysis.loss.value.damping.length === 0) return undefined;
  const tested = ({ value, doubt }: { value: number; doubt: number }) =>
    [rounded(value), rounded(doubt / coverage)] as const;
  return analysis.loss.value.damping.map(({ depthMm, compressing, rebounding }) => ({
    depthMm: rounded(depthMm),
    compressing: tested(compressing),
    rebounding: tested(rebounding),
  }));
}

/** What the pack keeps of an import. */
export function packTestOf(imported: TestImport, conditions: TestConditions = {}): PackTest {
  const { file, analysis } = imported;
  const { staticCurve } = analysis;
  const damping = dampingOf(analysis);
  const timed = analysis.kind === "timed" ? analysis : null;
  const sentences = remarksOf(imported)
    .slice(0, packBounds.remarksOfTest)
    .map(({ sentence }) => sentence);
  return {
    id: newId(),
    file: file.name.slice(0, recordBounds.labelCharacters),
    importedAt: new Date().toISOString(),
    rows: file.rows,
    kind: analysis.kind,
    remarks: sentences.map(inModelUnits),
    remarkSentences: sentences.map(worded),
    staticSpeedMmPerS: analysis.staticSpeedMmPerS,
    ...(staticCurve.ok && {
      curve: evenly(staticCurve.value.points, packBounds.testPoints).map(
        ({ depthMm, forceN, standardErrorN }) =>
          [rounded(depthMm), rounded(forceN), rounded(standardErrorN)] as const,
      ),
      residualRmsN: rounded(staticCurve.value.residuals.rmsN),
    }),
    ...(damping && { damping }),
    ...(timed?.loss.ok && {
      loss: lossOf(timed.loss.value),
      residuals: residualsOf(timed.loss.value),
    }),
    ...(timed &&
      timed.blocks.length > 0 && {
        blocks: timed.blocks.slice(0, packBounds.blocksOfTest).map(cyclesOf),
      }),
    ...(Object.keys(conditions).length > 0 && { conditions }),
    sample: sampleOf(analysis),
  };
}

/** What of a test is taken over into the stop's own figures. */
export interface TakeOver {
  readonly curve: boolean;
  /** Rest loss, branches and damping. */
  readonly loss: boolean;
}

/**
 * The stop with this test in it, and, where chosen, its curve and its loss from it. A tested curve
 * takes the place of an estimated one, and the mark goes with it.
 */
export function stopWithTest(
  stop: PackStop,
  imported: TestImport,
  test: PackTest,
  take: TakeOver,
): PackStop {
  const found = foundStop(imported.analysis);
  let next: PackStop = { ...stop, tests: [...(stop.tests ?? []), test] };
  if (found === null) return next;
  if (take.curve) {
    const { estimated: _estimate, ...tested } = next;
    next = {
      ...tested,
      curve: evenly(found.curve, recordBounds.curvePoints).map(
        ([depth, force]): CurvePoint => [rounded(depth), rounded(force)],
      ),
    };
  }
  if (!take.loss || !found.testedAtSpeed) return next;
  const { restLoss: _rest, staticShare: _share, branches: _branches, ...rest } = next;
  const { testDoubt: _doubt, ...others } = rest;
  const doubt = testDoubt(imported.analysis);
  return {
    ...others,
    testedAtSpeed: true,
    damping:
      found.damping &&
      evenly(found.damping, recordBounds.curvePoints).map(
        ([depth, into, out]): DampingPoint => [rounded(depth), rounded(into), rounded(out)],
      ),
    ...(found.restLoss > 0 && { restLoss: rounded(found.restLoss) }),
    ...(found.staticShare < 1 && { staticShare: rounded(found.staticShare) }),
    ...(found.branches.length > 0 && {
      branches: found.branches.map(({ tauS, share }) => ({ tauS, share: rounded(share) })),
    }),
    ...(doubt && { testDoubt: doubt }),
  };
}

/** The greatest depth of the curve that is to be taken over less the usable compression, mm; null: fine. */
export function shortOfUsable(stop: PackStop, imported: TestImport): number | null {
  const { analysis } = imported;
  if (!analysis.staticCurve.ok) return null;
  const last = analysis.staticCurve.value.points.at(-1)?.depthMm ?? 0;
  const usable = stop.usableCompressionMm;
  return stopCurve(stop).ok && last < usable ? usable - last : null;
}
