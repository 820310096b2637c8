import * as messages from "../../words/compiled/physics/stopTests.ts";
import type { CurvePoint, DampingPoint, StopBranch } from "../fitment.ts";
import type { DampingFit, Remark, RowsAnalysis, TestAnalysis } from "./benchTest.ts";
import type { StopLoss } from "./stopLoss.ts";

/** What a test found of a stop, in the shape in which a stop holds it, each part with its ±, 95 %. */
export interface FoundStop {
  readonly curve: readonly CurvePoint[];
  readonly staticShare: number;
  readonly restLoss: number;
  readonly branches: readonly StopBranch[];
  readonly damping: readonly DampingPoint[] | null;
  /** The test tells loss at speed from nothing. */
  readonly testedAtSpeed: boolean;
  /** Greatest speed of the rows at speed, mm/s; 0 where there are none. */
  readonly fastestMmPerS: number;
  readonly doubt: FoundDoubt;
}

/** ± of each part, 95 %; of a part that was not found, what it may still be. */
interface FoundDoubt {
  /** [mm, ± N] at the points of the curve. */
  readonly curve: readonly (readonly [number, number])[];
  readonly staticShare: number;
  readonly restLoss: number;
  readonly branches: readonly StopBranch[];
  /** [mm, ± compressing, ± rebounding], N·s/mm; of a dashpot that was not found, one row. */
  readonly damping: readonly DampingPoint[];
}

/** 95 % of a normal distribution, in standard errors. */
const coverage = 1.96;

/** Null where a test has no static curve, without which none of its figures is a stop's. */
export function foundStop(analysis: TestAnalysis): FoundStop | null {
  if (!analysis.staticCurve.ok) return null;
  const { points } = analysis.staticCurve.value;
  const still: FoundStop = {
    curve: points.map(({ depthMm, forceN }) => [depthMm, forceN]),
    staticShare: 1,
    restLoss: 0,
    branches: [],
    damping: null,
    testedAtSpeed: false,
    fastestMmPerS: 0,
    doubt: {
      curve: points.map(({ depthMm, standardErrorN }) => [depthMm, coverage * standardErrorN]),
      staticShare: 0,
      restLoss: 0,
      branches: [],
      damping: [],
    },
  };
  if (analysis.kind === "rows") return withRows(still, analysis);
  return analysis.loss.ok ? withLoss(still, analysis.loss.value) : still;
}

function withLoss(still: FoundStop, loss: StopLoss): FoundStop {
  const { damping, branches, restLoss, staticShare } = loss;
  return {
    ...still,
    staticShare: staticShare.value,
    restLoss: restLoss.value,
    branches: branches.map(({ tauS, share }) => ({ tauS, share: share.value })),
    damping:
      damping.length === 0
        ? null
        : damping.map(({ depthMm, compressing, rebounding }) => [
            depthMm,
            compressing.value,
            rebounding.value,
          ]),
    testedAtSpeed: restLoss.value > 0 || branches.length > 0 || damping.length > 0,
    fastestMmPerS: loss.fastestMmPerS,
    doubt: {
      curve: still.doubt.curve,
      staticShare: staticShare.doubt,
      restLoss: restLoss.doubt,
      branches: branches.map(({ tauS, share }) => ({ tauS, share: share.doubt })),
      damping:
        damping.length === 0
          ? [[0, loss.dampingDoubt, loss.dampingDoubt]]
          : damping.map(({ depthMm, compressing, rebounding }) => [
              depthMm,
              compressing.doubt,
              rebounding.doubt,
            ]),
    },
  };
}

function withRows(still: FoundStop, { damping, speeds }: RowsAnalysis): FoundStop {
  const fastestMmPerS = Math.max(0, ...speeds.map(({ speedMmPerS }) => Math.abs(speedMmPerS)));
  if (!damping.ok) return { ...still, fastestMmPerS };
  const { rows, table, restLoss } = damping.value;
  const doubt = rows.map(
    ({ depthMm, compressing, rebounding }): DampingPoint => [
      depthMm,
      coverage * (compressing?.standardError ?? 0),
      coverage * (rebounding?.standardError ?? 0),
    ],
  );
  const told = isTold(damping.value);
  return {
    ...still,
    restLoss: told ? (restLoss?.value ?? 0) : 0,
    damping: told ? table : null,
    testedAtSpeed: told,
    fastestMmPerS,
    doubt: {
      ...still.doubt,
      restLoss: coverage * (restLoss?.standardError ?? 0),
      damping: doubt,
    },
  };
}

/** Standard errors by which the mean of a table must stand above nothing. */
const clearly = 3;

/**
 * Rest loss stands above its doubt, or the dashpot does: the mean of its table, weighted by its doubt, as
 * one of many depths stands above its own by chance.
 */
export function isTold({ rows, restLoss }: DampingFit): boolean {
  if (restLoss !== null && restLoss.value > coverage * restLoss.standardError) return true;
  let weights = 0;
  let sum = 0;
  for (const value of rows.flatMap((row) => [row.compressing, row.rebounding])) {
    if (value === null) continue;
    const weight = 1 / Math.max(value.standardError, leastStandardError) ** 2;
    weights += weight;
    sum += weight * value.coefficient;
  }
  return sum > clearly * Math.sqrt(weights);
}

/** N·s/mm: rows without any scatter have a doubt all the same. */
const leastStandardError = 1e-6;

export const lossNotTold: Remark = {
  code: "lossNotTold",
  sentence: [messages.whatThisTestLoses],
};
