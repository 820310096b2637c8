import { mean } from "../uncertainty/readingMean.ts";
import { foundLaw, likelyLaws } from "./chosenLaw.ts";
import { fitGrams } from "./fitGrams.ts";
import type { FitRows } from "./fitRows.ts";
import {
  branchTimesS,
  dashpotColumns,
  type LawColumns,
  lawColumns,
  residualsOfLaw,
} from "./lawColumns.ts";
import { drawnLaws, fewCycles, halfWidth } from "./lossDoubt.ts";
import { residualsFrom } from "./residuals.ts";
import { sampledPlaces } from "./sampled.ts";
import type { Doubted, DrawnLoss, StopLoss } from "./stopLoss.ts";

const mostKnots = 5;
const mostDraws = 60;

/**
 * Dashpot, rest loss and branches of a stop from the rows of a test in the order of time, together with
 * the share of its ramp's curve that remains at rest: non-negative least squares of the force law of
 * `stop` by the noise of the load cell (`fitGrams`), the parts kept that unseen cycles need (`partsKept`),
 * with a dashpot or quick branches or, where the test leaves that open, the mean of both (`likelyLaws`),
 * each part with the doubt of `drawnLaws`. Nothing is fitted deeper than the static curve. Null where no
 * row at speed touches the stop.
 */
export function lossFit(fit: FitRows): StopLoss | null {
  const { rows, usable, curve } = fit;
  const knots = knotsOf(fit);
  if (knots === null) return null;
  const columns = lawColumns(rows, curve, knots, true);
  const fitted = fitGrams(fit, columns);
  const { grams, shape } = fitted;
  const cycles = grams.filter(({ stratum }) => stratum !== null);
  if (cycles.length === 0) return null;
  const likely = likelyLaws(fit, columns, fitted);
  const law = foundLaw(likely);
  const strata = new Set(cycles.map(({ stratum }) => stratum)).size;
  const freedom = cycles.length - strata;
  const force = curve.force(fit.deepestMm);
  const doubtColumns = {
    rate: columns.count,
    one: columns.count + 1,
    time: columns.count + 2,
    slope: columns.count + 3,
  };
  const draw = (allowed: Uint8Array, best: Float64Array) =>
    drawnLaws(grams, shape, doubtColumns, allowed, best, force);
  const drawn = byWeight(
    likely.map(({ allowed, law: best, weight }) => ({
      weight,
      items: draw(allowed, best).map((each) => ({ each, best })),
    })),
  );
  const everything = new Uint8Array(columns.count).fill(1);
  for (let column = columns.branches; column < columns.count; column++) {
    everything[column] = likely.some(({ allowed }) => allowed[column] === 1) ? 1 : 0;
  }
  const isAllowed = (column: number) => likely.some(({ allowed }) => allowed[column] === 1);
  const withAll = everything.every((on, column) => on === 0 || isAllowed(column))
    ? drawn.map(({ each }) => each)
    : draw(everything, law);
  const doubted = (column: number): Doubted => ({
    value: law[column],
    doubt: halfWidth(
      (isAllowed(column) ? drawn.map(({ each }) => each) : withAll).map((each) => each[column]),
      law[column],
      freedom,
    ),
  });
  const ofLaw = (of: (each: Float64Array) => number): Doubted => ({
    value: of(law),
    doubt: halfWidth(
      drawn.map(({ each }) => of(each)),
      of(law),
      freedom,
    ),
  });
  const hasDashpot = knots.some(
    (_, knot) => law[columns.dashpot + knot] > 0 || law[columns.dashpot + knots.length + knot] > 0,
  );
  const dampingRows = knots.map((depthMm, knot) => ({
    depthMm,
    compressing: doubted(columns.dashpot + knot),
    rebounding: doubted(columns.dashpot + knots.length + knot),
  }));
  const left = residualsOfLaw(rows.forceN, columns, law);
  const used = <T extends Float64Array>(values: T) => values.filter((_, row) => usable[row] === 1);
  const fastest = used(rows.speedMmPerS).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const omega = (2 * fastest) / fit.deepestMm;
  const residuals = residualsFrom(used(rows.depthMm), used(left));
  return {
    staticShare: doubted(0),
    restLoss: doubted(columns.rest),
    fading: ofLaw((each) => lossModulus(each, columns, omega)),
    whole: ofLaw((each) => wholeLoss(each, columns, omega, force / fit.deepestMm)),
    branches: branchTimesS.flatMap((tauS, index) => {
      const share = doubted(columns.branches + index);
      return share.value > 0 ? [{ tauS, share }] : [];
    }),
    damping: hasDashpot ? dampingRows : [],
    dampingDoubt: Math.max(
      ...dampingRows.map((row) => Math.max(row.compressing.doubt, row.rebounding.doubt)),
    ),
    fastestMmPerS: fastest,
    draws: Array.from(sampledPlaces(drawn.length, mostDraws), (place) => {
      const { each, best } = drawn[place];
      return lossOfLaw(widened(each, best, fewCycles(freedom)), columns);
    }),
    misfitN: residuals.rmsN,
    residuals,
  };
}

/** As many of each as its weight, of as many in all as one of them has. */
function byWeight<Item>(
  from: readonly { readonly weight: number; readonly items: readonly Item[] }[],
): readonly Item[] {
  let begin = 0;
  let weights = 0;
  return from.flatMap(({ weight, items }) => {
    weights += weight;
    const end = Math.round(weights * items.length);
    const own = items.slice(begin, end);
    begin = end;
    return own;
  });
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

/**
 * What is lost at that frequency, a share of the stop's mean rate: at rest, by branches and by the mean
 * dashpot (c·ω). One number of all parts, which stand for each other.
 */
function wholeLoss(
  law: Float64Array,
  columns: LawColumns,
  omega: number,
  rateNPerMm: number,
): number {
  const dashpot = dashpotColumns(columns);
  const damping = mean(dashpot.map((column) => law[column]));
  return law[columns.rest] + lossModulus(law, columns, omega) + (damping * omega) / rateNPerMm;
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
