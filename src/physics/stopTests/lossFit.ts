import type { FitRows } from "./fitRows.ts";
import { branchTimesS, type LawColumns, lawColumns } from "./lawColumns.ts";
import { drawnLaws, fewCycles, halfWidth } from "./lossDoubt.ts";
import { type FitShape, fittedLaw, type LawPart, partsKept } from "./partsKept.ts";
import { repeatedMisfit } from "./repeatedMisfit.ts";
import { residualsFrom } from "./residuals.ts";
import type { Doubted, DrawnLoss, StopLoss } from "./stopLoss.ts";
import { squaredMisfit, summedGrams, type UnitGram, unitGrams } from "./unitGrams.ts";
import type { WorkingRows } from "./workingRows.ts";

const mostKnots = 5;
const mostDraws = 60;
/**
 * A dashpot is kept where it leaves less than this share of what comes back, squared, without it: simulated
 * stops with one leave 0 to 0.05, those with many branches and none 0.38 and more. In doubt branches foretell
 * the harder hit and the faster leaving, which is the safe side.
 */
const dashpotShare = 0.25;
/** Within so many standard errors of that share the test tells neither: either law is allowed by it. */
const undecided = 1.5;
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
  const { allowed, law, other } = chosenLaw(fit, columns, grams, shape);
  const strata = new Set(cycles.map(({ stratum }) => stratum)).size;
  const freedom = cycles.length - strata;
  const force = curve.force(fit.deepestMm);
  const doubtColumns = {
    rate: columns.count,
    one: columns.count + 1,
    time: columns.count + 2,
    slope: columns.count + 3,
  };
  const draw = (columnsAllowed: Uint8Array, best = law) =>
    drawnLaws(grams, shape, doubtColumns, columnsAllowed, best, force);
  const drawn = draw(allowed);
  const everything = allowed.slice();
  for (let column = 0; column < columns.branches; column++) everything[column] = 1;
  const withAll =
    drawn.length > 0 && everything.some((on, at) => on !== allowed[at]) ? draw(everything) : drawn;
  const doubted = (column: number): Doubted => ({
    value: law[column],
    doubt: halfWidth(
      (allowed[column] === 1 ? drawn : withAll).map((each) => each[column]),
      law[column],
      freedom,
    ),
  });
  const laws = (from: readonly Float64Array[], best: Float64Array) =>
    from.map((each) => lossOfLaw(widened(each, best, fewCycles(freedom)), columns));
  const hasDashpot = knots.some(
    (_, knot) => law[columns.dashpot + knot] > 0 || law[columns.dashpot + knots.length + knot] > 0,
  );
  const dampingRows = knots.map((depthMm, knot) => ({
    depthMm,
    compressing: doubted(columns.dashpot + knot),
    rebounding: doubted(columns.dashpot + knots.length + knot),
  }));
  const left = residualsOfLaw(rows, columns, law);
  const used = <T extends Float64Array>(values: T) => values.filter((_, row) => usable[row] === 1);
  const fastest = used(rows.speedMmPerS).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const omega = (2 * fastest) / fit.deepestMm;
  const modulus = (each: Float64Array) => lossModulus(each, columns, omega);
  const residuals = residualsFrom(used(rows.depthMm), used(left));
  return {
    staticShare: doubted(0),
    restLoss: doubted(columns.rest),
    fading: {
      value: modulus(law),
      doubt: halfWidth(drawn.map(modulus), modulus(law), freedom),
    },
    branches: branchTimesS.flatMap((tauS, index) => {
      const share = doubted(columns.branches + index);
      return share.value > 0 ? [{ tauS, share }] : [];
    }),
    damping: hasDashpot ? dampingRows : [],
    dampingDoubt: Math.max(
      ...dampingRows.map((row) => Math.max(row.compressing.doubt, row.rebounding.doubt)),
    ),
    fastestMmPerS: fastest,
    draws: inTurn(
      laws(drawn, law),
      other === null ? [] : laws(draw(other.allowed, other.law), other.law),
    ).slice(0, mostDraws),
    misfitN: residuals.rmsN,
    residuals,
  };
}

/** A branch that takes less than this share of what is left of the force, squared, only fits its noise. */
const idleShare = 0.001;

/** The columns that stay once branches that hardly take anything are left out, the idlest first. */
function withoutIdle(
  sum: Float64Array,
  shape: FitShape,
  kept: Uint8Array,
  branches: number,
): Uint8Array {
  const misfitOf = (allowed: Uint8Array) =>
    squaredMisfit(sum, shape.size, fittedLaw(sum, shape, allowed), shape.force);
  let allowed: Uint8Array = kept.slice();
  for (let column = branches; column < allowed.length; column++) {
    if (fittedLaw(sum, shape, kept)[column] === 0) allowed[column] = 0;
  }
  const whole = misfitOf(allowed);
  for (;;) {
    let best: { readonly allowed: Uint8Array; readonly misfit: number } | null = null;
    for (let column = branches; column < allowed.length; column++) {
      if (allowed[column] === 0) continue;
      const without = allowed.slice();
      without[column] = 0;
      const misfit = misfitOf(without);
      if (best === null || misfit < best.misfit) best = { allowed: without, misfit };
    }
    if (best === null || best.misfit > (1 + idleShare) * whole) return allowed;
    allowed = best.allowed;
  }
}

interface FittedLaw {
  readonly allowed: Uint8Array;
  readonly law: Float64Array;
}

/** One of each in turn, as long as both last; all of the first where there is no second. */
function inTurn<T>(first: readonly T[], second: readonly T[]): readonly T[] {
  if (second.length === 0) return first;
  return first.slice(0, second.length).flatMap((one, at) => [one, second[at] as T]);
}

/** The best law with some columns more. */
function withColumns(
  sum: Float64Array,
  shape: FitShape,
  allowed: Uint8Array,
  columns: readonly number[],
): FittedLaw {
  const more = allowed.slice();
  for (const column of columns) more[column] = 1;
  return { allowed: more, law: fittedLaw(sum, shape, more) };
}

/**
 * The law with a dashpot, or without one: a dashpot, which has a value at each depth, also takes up what
 * branches between those of the fit leave, and foretells harder hits too softly then. So it must explain
 * most of what comes back cycle after cycle, not only some of it. `other` is the one that was not chosen,
 * where the noise of the test leaves that open.
 */
function chosenLaw(
  fit: FitRows,
  columns: LawColumns,
  grams: readonly UnitGram[],
  shape: FitShape,
): FittedLaw & { readonly other: FittedLaw | null } {
  const parts = partsOf(columns);
  const sum = summedGrams(grams, shape.size);
  const of = (offered: readonly LawPart[]) => {
    const kept = partsKept(grams, shape, offered);
    const allowed = withoutIdle(sum, shape, kept, columns.branches);
    return { allowed, law: fittedLaw(sum, shape, allowed) };
  };
  const without = of(parts.filter(({ name }) => name !== "dashpot"));
  const quick = branchTimesS.map((tauS, index) =>
    tauS < dashpotTimeS ? columns.branches + index : -1,
  );
  const needed = of(
    parts.map((part) => ({
      ...part,
      columns: part.columns.filter((column) => !quick.includes(column)),
    })),
  );
  const isNeeded = needed.allowed[columns.dashpot] === 1;
  const whole = isNeeded ? needed : withColumns(sum, shape, needed.allowed, dashpotOf(columns));
  const left = (law: Float64Array) => repeatedMisfit(fit, residualsOfLaw(fit.rows, columns, law));
  const own = left(whole.law);
  const others = left(without.law);
  const beyond = own.square - dashpotShare * others.square;
  const error = Math.hypot(own.standardError, dashpotShare * others.standardError);
  const isOpen = Math.abs(beyond) < undecided * error;
  return isNeeded && beyond < 0
    ? { ...whole, other: isOpen ? without : null }
    : { ...without, other: isOpen ? whole : null };
}

/** A drawn law, as far again from the best one as few cycles make it uncertain; parts not below 0. */
function widened(drawn: Float64Array, best: Float64Array, factor: number): Float64Array {
  return drawn.map((value, part) => {
    const middle = best[part];
    return Math.max(0, middle + factor * (value - middle));
  });
}

/**
 * Share of the curve's rate that the branches lose in a cycle of angular frequency ω, 1/s: the loss modulus
 * Σ g·ωτ/(1 + ω²τ²) of Maxwell's elements. Source: Ferry, Viscoelastic Properties of Polymers, ch. 3 (from
 * memory). Neighbouring branches stand for each other, so that their sum is known better than each.
 */
function lossModulus(law: Float64Array, { branches }: LawColumns, omega: number): number {
  return branchTimesS.reduce((sum, tau, index) => {
    const turns = omega * tau;
    return sum + (law[branches + index] * turns) / (1 + turns * turns);
  }, 0);
}

function residualsOfLaw(rows: WorkingRows, columns: LawColumns, law: Float64Array): Float64Array {
  const left = rows.forceN.slice();
  for (const [column, values] of columns.values.entries()) {
    const part = law[column];
    if (part === 0) continue;
    for (let row = 0; row < left.length; row++) {
      left[row] = left[row] - part * values[row];
    }
  }
  return left;
}

function lossOfLaw(law: Float64Array, columns: LawColumns): DrawnLoss {
  const { knotsMm, dashpot } = columns;
  const damping = knotsMm.map(
    (depth, knot) => [depth, law[dashpot + knot], law[dashpot + knotsMm.length + knot]] as const,
  );
  return {
    staticShare: Math.min(1, law[0]),
    restLoss: law[columns.rest],
    branches: branchTimesS.flatMap((tauS, index) => {
      const share = law[columns.branches + index];
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
    (_, row) => usable[row] === 1 && atSpeed.has(rows.stroke[row]),
  );
  if (depths.length < 20) return null;
  depths.sort();
  const at = (share: number) => depths[Math.floor(share * (depths.length - 1))];
  const [from, to] = [at(0.03), at(0.97)];
  if (!(to > from)) return null;
  return Array.from(
    { length: mostKnots },
    (_, knot) => from + (knot * (to - from)) / (mostKnots - 1),
  );
}

function dashpotOf({ dashpot, branches }: Pick<LawColumns, "dashpot" | "branches">) {
  return Array.from({ length: branches - dashpot }, (_, index) => dashpot + index);
}

function partsOf({ rest, dashpot, branches, count }: LawColumns): readonly LawPart[] {
  return [
    { name: "rest", columns: [rest] },
    { name: "dashpot", columns: dashpotOf({ dashpot, branches }) },
    {
      name: "branches",
      columns: Array.from({ length: count - branches }, (_, index) => branches + index),
    },
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
    use === 1 ? (unitOfStroke.get(rows.stroke[row]) ?? -1) : -1,
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
