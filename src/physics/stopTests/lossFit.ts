import type { FitRows } from "./fitRows.ts";
import { branchTimesS, type LawColumns, lawColumns } from "./lawColumns.ts";
import { drawnLaws, halfWidth } from "./lossDoubt.ts";
import { type FitShape, fittedLaw, type LawPart, partsKept } from "./partsKept.ts";
import { repeatedMisfit } from "./repeatedMisfit.ts";
import { residualsFrom } from "./residuals.ts";
import type { Doubted, DrawnLoss, StopLoss } from "./stopLoss.ts";
import { summedGrams, type UnitGram, unitGrams } from "./unitGrams.ts";
import type { WorkingRows } from "./workingRows.ts";

const mostKnots = 5;
const mostDraws = 60;
/** A dashpot is kept where it leaves less than this share of what comes back, squared, without it. */
const dashpotShare = 0.25;
/** Branches quicker than this, s, are dashpots to any test at less than some m/s: one or the other. */
const dashpotTimeS = 0.005;

/**
 * Dashpot, rest loss and branches of a stop from the rows of a test in the order of time, together with
 * the share of its ramp's curve that remains at rest: non-negative least squares of the force law of
 * `stop`, the parts kept that unseen cycles need (`partsKept`), each with the doubt of `drawnLaws`.
 * Nothing is fitted deeper than the static curve. Null where no row at speed touches the stop.
 */
export function lossFit(fit: FitRows): StopLoss | null {
  const { rows, usable, curve } = fit;
  const knots = knotsOf(fit);
  if (knots === null) return null;
  const columns = lawColumns(rows, curve, knots, true);
  const { grams, shape } = gramsOf(fit, columns);
  const cycles = grams.filter(({ stratum }) => stratum !== null);
  if (cycles.length === 0) return null;
  const { allowed, law } = chosenLaw(fit, columns, grams, shape);
  const strata = new Set(cycles.map(({ stratum }) => stratum)).size;
  const freedom = cycles.length - strata;
  const force = curve.force(fit.deepestMm);
  const doubtColumns = {
    rate: columns.count,
    one: columns.count + 1,
    time: columns.count + 2,
    slope: columns.count + 3,
  };
  const draw = (columnsAllowed: Uint8Array) =>
    drawnLaws(grams, shape, doubtColumns, columnsAllowed, law, force);
  const drawn = draw(allowed);
  const everything = allowed.slice();
  for (let column = 0; column < columns.branches; column++) everything[column] = 1;
  const withAll =
    drawn.length > 0 && everything.some((on, at) => on !== allowed[at]) ? draw(everything) : drawn;
  const doubted = (column: number): Doubted => ({
    value: law[column] as number,
    doubt: halfWidth(
      (allowed[column] === 1 ? drawn : withAll).map((each) => each[column] as number),
      law[column] as number,
      freedom,
    ),
  });
  const hasDashpot = knots.some(
    (_, knot) =>
      (law[columns.dashpot + knot] as number) > 0 ||
      (law[columns.dashpot + knots.length + knot] as number) > 0,
  );
  const dampingRows = knots.map((depthMm, knot) => ({
    depthMm,
    compressing: doubted(columns.dashpot + knot),
    rebounding: doubted(columns.dashpot + knots.length + knot),
  }));
  const left = residualsOfLaw(rows, columns, law);
  const used = <T extends Float64Array>(values: T) => values.filter((_, row) => usable[row] === 1);
  const residuals = residualsFrom(used(rows.depthMm), used(left));
  const fastest = used(rows.speedMmPerS).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  return {
    staticShare: doubted(0),
    restLoss: doubted(columns.rest),
    branches: branchTimesS.flatMap((tauS, index) => {
      const share = doubted(columns.branches + index);
      return share.value > 0 ? [{ tauS, share }] : [];
    }),
    damping: hasDashpot ? dampingRows : [],
    dampingDoubt: Math.max(
      ...dampingRows.map((row) => Math.max(row.compressing.doubt, row.rebounding.doubt)),
    ),
    fastestMmPerS: fastest,
    draws: drawn.slice(0, mostDraws).map((each) => lossOfLaw(each, columns)),
    misfitN: residuals.rmsN,
    residuals,
  };
}

/**
 * The law with a dashpot, or without one: a dashpot, which has a value at each depth, also takes up what
 * branches between those of the fit leave, and foretells harder hits too softly then. So it must explain
 * most of what comes back cycle after cycle, not only some of it.
 */
function chosenLaw(
  fit: FitRows,
  columns: LawColumns,
  grams: readonly UnitGram[],
  shape: FitShape,
): { readonly allowed: Uint8Array; readonly law: Float64Array } {
  const parts = partsOf(columns);
  const sum = summedGrams(grams, shape.size);
  const of = (offered: readonly LawPart[]) => {
    const allowed = partsKept(grams, shape, offered);
    const law = fittedLaw(sum, shape, allowed);
    return { allowed, law };
  };
  const without = of(parts.filter(({ name }) => name !== "dashpot"));
  const quick = branchTimesS.map((tauS, index) =>
    tauS < dashpotTimeS ? columns.branches + index : -1,
  );
  const whole = of(parts.filter((part) => !part.columns.some((column) => quick.includes(column))));
  if (whole.allowed[columns.dashpot] === 0) return without;
  const left = (law: Float64Array) => repeatedMisfit(fit, residualsOfLaw(fit.rows, columns, law));
  return left(whole.law) < dashpotShare * left(without.law) ? whole : without;
}

function residualsOfLaw(rows: WorkingRows, columns: LawColumns, law: Float64Array): Float64Array {
  const left = rows.forceN.slice();
  for (const [column, values] of columns.values.entries()) {
    const part = law[column] as number;
    if (part === 0) continue;
    for (let row = 0; row < left.length; row++) {
      left[row] = (left[row] as number) - part * (values[row] as number);
    }
  }
  return left;
}

function lossOfLaw(law: Float64Array, columns: LawColumns): DrawnLoss {
  const { knotsMm, dashpot } = columns;
  const damping = knotsMm.map(
    (depth, knot) =>
      [
        depth,
        law[dashpot + knot] as number,
        law[dashpot + knotsMm.length + knot] as number,
      ] as const,
  );
  return {
    staticShare: law[0] as number,
    restLoss: law[columns.rest] as number,
    branches: branchTimesS.flatMap((tauS, index) => {
      const share = law[columns.branches + index] as number;
      return share > 0 ? [{ tauS, share }] : [];
    }),
    damping: damping.some(([, into, out]) => into > 0 || out > 0) ? damping : null,
  };
}

/** Depths of the dashpot's knots: even from 5 to 95 % of the depths that were moved through at speed. */
function knotsOf({ rows, usable, units, rampBlocks }: FitRows): readonly number[] | null {
  const atSpeed = new Set(
    units.filter(({ block }) => !rampBlocks.has(block)).flatMap(({ strokes }) => strokes),
  );
  const depths = rows.depthMm.filter(
    (_, row) => usable[row] === 1 && atSpeed.has(rows.stroke[row] as number),
  );
  if (depths.length < 20) return null;
  depths.sort();
  const at = (share: number) => depths[Math.floor(share * (depths.length - 1))] as number;
  const [from, to] = [at(0.03), at(0.97)];
  if (!(to > from)) return null;
  return Array.from(
    { length: mostKnots },
    (_, knot) => from + (knot * (to - from)) / (mostKnots - 1),
  );
}

function partsOf({ rest, dashpot, branches, count }: LawColumns): readonly LawPart[] {
  return [
    { name: "rest", columns: [rest] },
    {
      name: "dashpot",
      columns: Array.from({ length: branches - dashpot }, (_, index) => dashpot + index),
    },
    ...Array.from({ length: count - branches }, (_, index) => ({
      name: "branch" as const,
      columns: [branches + index],
    })),
  ];
}

function gramsOf(
  { rows, usable, units, rampBlocks }: FitRows,
  columns: LawColumns,
): { readonly grams: readonly UnitGram[]; readonly shape: FitShape } {
  const unitOfStroke = new Map<number, number>();
  for (const [index, { strokes }] of units.entries()) {
    for (const stroke of strokes) unitOfStroke.set(stroke, index);
  }
  const unit = Int32Array.from(usable, (use, row) =>
    use === 1 ? (unitOfStroke.get(rows.stroke[row] as number) ?? -1) : -1,
  );
  const [first, last] = [rows.timeS[0] ?? 0, rows.timeS.at(-1) ?? 0];
  const middle = (first + last) / 2;
  const half = Math.max((last - first) / 2, Number.MIN_VALUE);
  const all = [
    ...columns.values,
    rows.forceRate,
    new Float64Array(usable.length).fill(1),
    rows.timeS.map((time) => (time - middle) / half),
    columns.slope,
    rows.forceN,
  ];
  const grams = unitGrams(
    all,
    unit,
    units.map(({ block }) => (rampBlocks.has(block) ? null : block)),
  );
  return {
    grams,
    shape: { size: all.length, n: columns.count, force: all.length - 1 },
  };
}
