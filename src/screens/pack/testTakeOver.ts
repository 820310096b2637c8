import type { CurvePoint, DampingPoint } from "../../physics/fitment.ts";
import { inModelUnits } from "../../physics/sentence.ts";
import { stopCurve } from "../../physics/stop/stopCurve.ts";
import type { Remark, RowsAnalysis } from "../../physics/stopTests/benchTest.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { newId } from "../../records/check/storedCheck.ts";
import { type PackStop, type PackTest, packBounds } from "../../records/pack/pack.ts";
import type { TestImport } from "../../records/testRows/testFile.ts";

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
function sampleOf({ speeds }: RowsAnalysis): [number, number, number][] {
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

/** What the pack keeps of an import. */
export function packTestOf(imported: TestImport): PackTest {
  const { file, analysis } = imported;
  const remarks = remarksOf(imported).map(({ sentence }) => inModelUnits(sentence));
  const common = {
    id: newId(),
    file: file.name.slice(0, recordBounds.labelCharacters),
    importedAt: new Date().toISOString(),
    rows: file.rows,
  };
  if (analysis.kind === "cycles") {
    const { loop } = analysis;
    const points = Array.from(
      loop.displacementMm,
      (mm, index) => [rounded(mm), rounded(loop.forceN[index] ?? 0)] as const,
    );
    return {
      ...common,
      kind: "cycles",
      remarks,
      cycles: {
        count: analysis.cycles,
        frequencyHz: rounded(analysis.frequencyHz),
        amplitudeMm: rounded(analysis.amplitudeMm),
        energyInJ: rounded(analysis.energyInJ.value),
        energyOutJ: rounded(analysis.energyOutJ.value),
        lossJ: rounded(analysis.lossJ.value),
        dynamicRateNPerMm: rounded(analysis.dynamicRateNPerMm.value),
        lossFactor: analysis.lossFactor && rounded(analysis.lossFactor.value),
        equivalentDampingNsPerMm:
          analysis.equivalentDampingNsPerMm && rounded(analysis.equivalentDampingNsPerMm.value),
        loop: evenly(points, packBounds.testPoints),
      },
    };
  }
  const { staticCurve, damping } = analysis;
  return {
    ...common,
    kind: "rows",
    remarks,
    staticSpeedMmPerS: analysis.staticSpeedMmPerS,
    ...(staticCurve.ok && {
      curve: evenly(staticCurve.value.points, packBounds.testPoints).map(
        ({ depthMm, forceN, standardErrorN }) =>
          [rounded(depthMm), rounded(forceN), rounded(standardErrorN)] as const,
      ),
      residualRmsN: rounded(staticCurve.value.residuals.rmsN),
    }),
    ...(damping.ok && {
      damping: damping.value.rows.slice(0, packBounds.testPoints).map((row) => ({
        depthMm: rounded(row.depthMm),
        compressing:
          row.compressing &&
          ([rounded(row.compressing.coefficient), rounded(row.compressing.standardError)] as const),
        rebounding:
          row.rebounding &&
          ([rounded(row.rebounding.coefficient), rounded(row.rebounding.standardError)] as const),
      })),
    }),
    sample: sampleOf(analysis),
  };
}

/** What of a test is taken over into the stop's own figures. */
export interface TakeOver {
  readonly curve: boolean;
  readonly damping: boolean;
}

/**
 * The stop with this test in it, and, where chosen, its curve and its damping from it. A tested curve
 * takes the place of an estimated one, and the mark goes with it.
 */
export function stopWithTest(
  stop: PackStop,
  imported: TestImport,
  test: PackTest,
  take: TakeOver,
): PackStop {
  const { analysis } = imported;
  const withTest: PackStop = { ...stop, tests: [...(stop.tests ?? []), test] };
  if (analysis.kind === "cycles") return withTest;
  let next = withTest;
  if (take.curve && analysis.staticCurve.ok) {
    const points = evenly(analysis.staticCurve.value.points, recordBounds.curvePoints);
    const { estimated: _estimate, ...tested } = next;
    next = {
      ...tested,
      curve: points.map(({ depthMm, forceN }): CurvePoint => [rounded(depthMm), rounded(forceN)]),
    };
  }
  if (take.damping && analysis.damping.ok) {
    const table = evenly(analysis.damping.value.table, recordBounds.curvePoints);
    next = {
      ...next,
      testedAtSpeed: true,
      damping: table.map(
        ([depth, into, out]): DampingPoint => [rounded(depth), rounded(into), rounded(out)],
      ),
    };
  }
  return next;
}

/** The greatest depth of the curve that is to be taken over less the usable compression, mm; null: fine. */
export function shortOfUsable(stop: PackStop, imported: TestImport): number | null {
  const { analysis } = imported;
  if (analysis.kind === "cycles" || !analysis.staticCurve.ok) return null;
  const last = analysis.staticCurve.value.points.at(-1)?.depthMm ?? 0;
  const usable = stop.usableCompressionMm;
  return stopCurve(stop).ok && last < usable ? usable - last : null;
}
