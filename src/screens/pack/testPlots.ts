import type { RowsAnalysis, TestAnalysis, TimedAnalysis } from "../../physics/stopTests/index.ts";
import type { PackTest } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import type { Series } from "../charts/SeriesChart.tsx";

type Point = readonly [number, number];

/** A 95 % ± over a standard error. */
const coverage = 1.96;

/** What the plots of one test need, from an import or from what the pack keeps of it. */
export interface TestPlots {
  /** The rows of each speed, mm/s; 0 are the static ones. [mm, N]. */
  readonly speeds: readonly { readonly speedMmPerS: number; readonly points: readonly Point[] }[];
  /** The static curve. */
  readonly curve: readonly Point[] | null;
  readonly damping: readonly DampingPlotRow[] | null;
  /** Of the static rows and of the rows at speed, [mm, N]. */
  readonly staticResiduals: readonly Point[] | null;
  readonly speedResiduals: readonly Point[] | null;
  /** The mean loop of each block of cycles, by its greatest speed, mm/s. */
  readonly loops: readonly { readonly speedMmPerS: number; readonly points: readonly Point[] }[];
}

export interface DampingPlotRow {
  readonly depthMm: number;
  readonly compressing: { readonly value: number; readonly standardError: number } | null;
  readonly rebounding: { readonly value: number; readonly standardError: number } | null;
}

function pairs(x: Float64Array, y: Float64Array): Point[] {
  return Array.from(x, (value, index): Point => [value, y[index] ?? 0]);
}

/** What every kind of test has: its rows by speed, and its curve. */
function stillPlots({
  speeds,
  staticCurve,
}: TestAnalysis): Pick<TestPlots, "speeds" | "curve" | "staticResiduals"> {
  return {
    speeds: speeds.map(({ speedMmPerS, depthMm, forceN }) => ({
      speedMmPerS,
      points: pairs(depthMm, forceN),
    })),
    curve: staticCurve.ok
      ? staticCurve.value.points.map(({ depthMm, forceN }): Point => [depthMm, forceN])
      : null,
    staticResiduals: staticCurve.ok
      ? pairs(staticCurve.value.residuals.depthMm, staticCurve.value.residuals.residualN)
      : null,
  };
}

export function plotsOfRows(analysis: RowsAnalysis): TestPlots {
  const { damping } = analysis;
  const plotted = (value: { coefficient: number; standardError: number } | null) =>
    value && { value: value.coefficient, standardError: value.standardError };
  return {
    ...stillPlots(analysis),
    damping: damping.ok
      ? damping.value.rows.map((row) => ({
          depthMm: row.depthMm,
          compressing: plotted(row.compressing),
          rebounding: plotted(row.rebounding),
        }))
      : null,
    speedResiduals: damping.ok
      ? pairs(damping.value.residuals.depthMm, damping.value.residuals.residualN)
      : null,
    loops: [],
  };
}

function plotsOfTimed(analysis: TimedAnalysis): TestPlots {
  const { loss, blocks } = analysis;
  const plotted = ({ value, doubt }: { value: number; doubt: number }) => ({
    value,
    standardError: doubt / coverage,
  });
  return {
    ...stillPlots(analysis),
    damping:
      loss.ok && loss.value.damping.length > 0
        ? loss.value.damping.map((row) => ({
            depthMm: row.depthMm,
            compressing: plotted(row.compressing),
            rebounding: plotted(row.rebounding),
          }))
        : null,
    speedResiduals: loss.ok
      ? pairs(loss.value.residuals.depthMm, loss.value.residuals.residualN)
      : null,
    loops: blocks.map(({ greatestSpeedMmPerS, loop }) => ({
      speedMmPerS: greatestSpeedMmPerS,
      points: pairs(loop.displacementMm, loop.forceN),
    })),
  };
}

export function plotsOf(analysis: TestAnalysis): TestPlots {
  return analysis.kind === "rows" ? plotsOfRows(analysis) : plotsOfTimed(analysis);
}

/** Straight lines between the curve's points from (0, 0); its end slope beyond, nothing before. */
function forceAt(curve: readonly Point[], depth: number): number {
  if (depth <= 0) return 0;
  let before: Point = [0, 0];
  let slope = 0;
  for (const point of curve) {
    if (point[0] > before[0]) slope = (point[1] - before[1]) / (point[0] - before[0]);
    if (depth <= point[0]) return before[1] + slope * (depth - before[0]);
    before = point;
  }
  return before[1] + slope * (depth - before[0]);
}

/** What the pack keeps is drawn again; its residuals are those of the sample about the kept curve. */
export function plotsOfPackTest(test: PackTest): TestPlots {
  const sample = test.sample ?? [];
  const threshold = test.staticSpeedMmPerS ?? 0;
  const bySpeed = new Map<number, Point[]>();
  for (const [depth, speed, force] of sample) {
    const key = Math.abs(speed) <= threshold ? 0 : Number(speed.toPrecision(2));
    const points = bySpeed.get(key) ?? [];
    points.push([depth, force]);
    bySpeed.set(key, points);
  }
  const curve = test.curve?.map(([depth, force]): Point => [depth, force]) ?? null;
  const plotted = (value: readonly [number, number] | null) =>
    value && { value: value[0], standardError: value[1] };
  return {
    speeds: [...bySpeed]
      .sort(([a], [b]) => a - b)
      .map(([speedMmPerS, points]) => ({ speedMmPerS, points })),
    curve,
    damping:
      test.damping?.map((row) => ({
        depthMm: row.depthMm,
        compressing: plotted(row.compressing),
        rebounding: plotted(row.rebounding),
      })) ?? null,
    staticResiduals: curve && (bySpeed.get(0)?.map(([x, y]) => [x, y - forceAt(curve, x)]) ?? null),
    speedResiduals: test.residuals ?? null,
    loops: (test.blocks ?? (test.cycles ? [test.cycles] : [])).map(
      ({ loop, frequencyHz, amplitudeMm }) => ({
        speedMmPerS: 2 * Math.PI * frequencyHz * amplitudeMm,
        points: loop,
      }),
    ),
  };
}

/** Which speeds to draw where there are more than fit: the slowest, the fastest, and between. */
export function shownSpeeds(speeds: TestPlots["speeds"], most: number): TestPlots["speeds"] {
  if (speeds.length <= most) return speeds;
  return Array.from(
    { length: most },
    (_, index) => speeds[Math.round((index * (speeds.length - 1)) / (most - 1))],
  ).filter((series) => series !== undefined);
}

export function thinnedPoints(points: readonly Point[], most: number): readonly Point[] {
  if (points.length <= most) return points;
  return Array.from(
    { length: most },
    (_, index) => points[Math.round((index * (points.length - 1)) / (most - 1))] as Point,
  );
}

/** The damping's two series: mean values with standard errors as bars. */
export function dampingSeries(rows: readonly DampingPlotRow[]): Series[] {
  const of = (name: string, key: "compressing" | "rebounding"): Series | null => {
    const known = rows.flatMap((row) => {
      const value = row[key];
      return value ? [{ depth: row.depthMm, ...value }] : [];
    });
    if (known.length === 0) return null;
    return {
      name,
      look: "dots",
      points: known.map(({ depth, value }) => [depth, value] as const),
      bars: known.map(({ standardError }) => standardError),
    };
  };
  return [
    of(messages.pressedDeeper3, "compressing"),
    of(messages.comingBack4, "rebounding"),
  ].filter((series) => series !== null);
}
