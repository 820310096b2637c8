import type { FitGrams } from "./fitGrams.ts";
import type { FitRows } from "./fitRows.ts";
import { whitened } from "./forceNoise.ts";
import { branchTimesS, dashpotColumns, type LawColumns, residualsOfLaw } from "./lawColumns.ts";
import { type FitShape, fittedLaw, type LawPart, partsKept } from "./partsKept.ts";
import { repeatedMisfit } from "./repeatedMisfit.ts";
import { squaredMisfit, summedGrams, type UnitGram } from "./unitGrams.ts";

/**
 * A dashpot is kept where it leaves less than this share of what comes back, squared, without it. Of
 * simulated stops under white noise those with one leave 0 to 0.06, those with one or two branches 0.6 and
 * more. Many branches leave 0.15 to 0.23: a dashpot stands for their quick ones, and peaks come out 2.5 %
 * too low at most. In doubt branches foretell the harder hit and the faster leaving, the safe side.
 */
const dashpotShare = 0.25;
/** Branches quicker than this, s, are dashpots to any test at less than some m/s: one or the other. */
const dashpotTimeS = 0.005;
/** A law less likely than this is not allowed by the test … */
const leastWeight = 0.05;
/** … and below this it is no part of what was found, only of its ±. */
const leastShared = 0.2;
/** So likely counts a law that the test leaves open and that nothing speaks for: it stands in the ± alone. */
const openWeight = 0.15;
/** A misfit that comes back by less than so many of its standard errors more is no other one. */
const openErrors = 2;

/** A law by the columns that it stands on, and how likely it is beside the others. */
export interface LikelyLaw {
  readonly allowed: Uint8Array;
  readonly law: Float64Array;
  readonly weight: number;
}

/**
 * The law with a dashpot and the one without, each as likely as the test makes it: a dashpot, which has a
 * value at each depth, also takes up what branches between those of the fit leave, and foretells harder
 * hits too softly then. So it must explain most of what comes back cycle after cycle, not only some of it.
 * Where noise leaves that open both stay, by their weights, which sum to 1; so does, in the ± alone, the
 * dashpot without the branches beside it where what they add comes back no better than noise.
 */
export function likelyLaws(
  fit: FitRows,
  columns: LawColumns,
  { usable, noise, grams, shape }: FitGrams,
): readonly LikelyLaw[] {
  const parts = partsOf(columns);
  const sum = summedGrams(grams, shape.size);
  const of = (offered: readonly LawPart[]) => {
    const kept = partsKept(grams, shape, offered);
    const allowed = withoutIdle(sum, shape, kept, columns.branches, idleShare(grams));
    return { allowed, law: fittedLaw(sum, shape, allowed) };
  };
  const without = of(parts.filter(({ name }) => name !== "dashpot"));
  const quick = branchTimesS.map((tauS, index) =>
    tauS < dashpotTimeS ? columns.branches + index : -1,
  );
  const withDashpot = of(
    parts.map((part) => ({
      ...part,
      columns: part.columns.filter((column) => !quick.includes(column)),
    })),
  );
  if (withDashpot.allowed[columns.dashpot] !== 1) return [{ ...without, weight: 1 }];
  const residualN = residualsOfLaw(fit.rows.forceN, columns, withDashpot.law);
  const own = repeatedMisfit(
    { ...fit, usable },
    noise === null ? residualN : whitened(fit.rows.timeS, usable, residualN, noise),
  );
  const misfitOf = ({ law }: { readonly law: Float64Array }) =>
    squaredMisfit(sum, shape.size, law, shape.force);
  const perRow = 1 / Math.max(1, own.rows);
  // Each value that is fitted takes up one of the noise's own.
  const values = ({ law }: { readonly law: Float64Array }) =>
    law.filter((part) => part > 0).length * own.noise * perRow;
  const gained = (misfitOf(without) - misfitOf(withDashpot)) * perRow;
  const left = own.square + values(withDashpot);
  const explained = Math.max(0, gained - values(withDashpot) + values(without));
  const short = dashpotShare * explained - (1 - dashpotShare) * left;
  const error = Math.hypot(
    (1 - dashpotShare) * own.standardError,
    dashpotShare * 2 * Math.sqrt(explained * own.noise * perRow),
  );
  const weight = shareBelow(short / Math.max(error, Number.MIN_VALUE));
  const alone = dashpotAlone(sum, shape, withDashpot.allowed, columns);
  const added = alone === null ? 0 : (misfitOf(alone) - misfitOf(withDashpot)) * perRow;
  const isOpen = alone !== null && added <= openErrors * own.standardError;
  const likely = [
    { ...withDashpot, weight },
    { ...without, weight: 1 - weight },
    ...(isOpen ? [{ ...alone, weight: openWeight }] : []),
  ].filter((each) => each.weight >= leastWeight);
  const total = likely.reduce((all, each) => all + each.weight, 0);
  return likely.map((each) => ({ ...each, weight: each.weight / total }));
}

/** The law without the branches that stand beside its dashpot; null where none do. */
function dashpotAlone(
  sum: Float64Array,
  shape: FitShape,
  kept: Uint8Array,
  { branches }: LawColumns,
): Omit<LikelyLaw, "weight"> | null {
  const allowed = kept.map((one, column) => (column < branches ? one : 0));
  if (allowed.every((one, column) => one === kept[column])) return null;
  return { allowed, law: fittedLaw(sum, shape, allowed) };
}

/**
 * What was found: the likely law, or the mean of two by their weights where neither clearly is. The mean
 * is a law too, as force is linear in its parts.
 */
export function foundLaw(likely: readonly LikelyLaw[]): Float64Array {
  const shared = likely.filter(({ weight }) => weight >= leastShared);
  const total = shared.reduce((sum, { weight }) => sum + weight, 0);
  const mean = new Float64Array(shared[0].law.length);
  for (const { law, weight } of shared) {
    for (let at = 0; at < mean.length; at++) mean[at] = mean[at] + (weight / total) * law[at];
  }
  return mean;
}

/** Normal distribution function, within 0.0002 (logistic in z + 0.044715·z³; from memory). */
function shareBelow(z: number): number {
  const turned = 2 * Math.sqrt(2 / Math.PI) * (z + 0.044715 * z ** 3);
  return 1 / (1 + Math.exp(-turned));
}

/**
 * What a branch must take of what is left of the force, squared, so that it does not only fit its noise:
 * Schwarz's criterion for one more value, ln n of n rows (Schwarz, Ann. Statist. 6 (1978) 461, from memory).
 */
function idleShare(grams: readonly UnitGram[]): number {
  const rows = Math.max(
    2,
    grams.reduce((sum, gram) => sum + gram.rows, 0),
  );
  return Math.log(rows) / rows;
}

/** The columns that stay once branches that take less than `idle` are left out, the idlest first. */
function withoutIdle(
  sum: Float64Array,
  shape: FitShape,
  kept: Uint8Array,
  branches: number,
  idle: number,
): Uint8Array {
  const misfitOf = (allowed: Uint8Array) =>
    squaredMisfit(sum, shape.size, fittedLaw(sum, shape, allowed), shape.force);
  let allowed: Uint8Array = kept.slice();
  const law = fittedLaw(sum, shape, kept);
  for (let column = branches; column < allowed.length; column++) {
    if (law[column] === 0) allowed[column] = 0;
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
    if (best === null || best.misfit > (1 + idle) * whole) return allowed;
    allowed = best.allowed;
  }
}

function partsOf(columns: LawColumns): readonly LawPart[] {
  const { rest, branches, count } = columns;
  return [
    { name: "rest", columns: [rest] },
    { name: "dashpot", columns: dashpotColumns(columns) },
    {
      name: "branches",
      columns: Array.from({ length: count - branches }, (_, index) => branches + index),
    },
  ];
}
