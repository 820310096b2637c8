import { type FigureName, figure } from "../budget/cornerModel.ts";
import { placeMeans } from "../budget/cornerReadings.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { Interval } from "../fitment.ts";
import type { ReadingId } from "../outcome.ts";
import { drawInto } from "./drawnReading.ts";
import { coverageInterval } from "./percentile.ts";

/** Draws made where nothing else is asked for: a percentile's own scatter is then about 1 % of an interval. */
export const defaultSamples = 40_000;
/** Fewest draws that are worth a 95 % interval (model.md, section 6). */
export const leastSamples = 10_000;
/** The fixed seed: phone and command line draw the same numbers. */
export const defaultSeed = 20_080_101;

/** Free travel wanted, mm: one number, or one a draw where the ride data themselves are in doubt. */
export type WantedTravel = number | Float64Array;

/** What the draws say about one corner. Lengths mm, shares and probabilities 0…1 of all draws. */
export interface CornerDraws {
  /** Draws in which the readings give no suspension at all, or one that cannot reach its own stop. */
  readonly outsideShare: number;
  /** 95 % of the draws inside; null without limits, and for all where no draw is inside. */
  readonly intervals: { readonly [Name in Exclude<FigureName, "hardLimit">]: Interval | null } & {
    readonly hardLimit: Interval | null;
  };
  /** P(reserve ≥ what is wanted) and P(reserve ≥ 0); null without limits. A draw outside does not conform. */
  readonly reserveWanted: number | null;
  readonly reserveAboveZero: number | null;
  /** P(z_c ≥ wanted travel), in the order asked for. */
  readonly contactBeyond: readonly number[];
}

/** Draws of every reading, made once and shared by all corners and figures that use it. */
export class SharedDraws {
  readonly samples: number;
  readonly #seed: number;
  readonly #columns = new Map<ReadingId, Float64Array>();

  constructor(samples = defaultSamples, seed = defaultSeed) {
    this.samples = Math.max(leastSamples, Math.round(samples) || defaultSamples);
    this.#seed = seed;
  }

  /** One number a draw for a reading in doubt. The same id always gives the same array. */
  column(reading: Parameters<typeof drawInto>[1]): Float64Array {
    const known = this.#columns.get(reading.id);
    if (known !== undefined) return known;
    const column = new Float64Array(this.samples);
    drawInto(column, reading, this.#seed);
    this.#columns.set(reading.id, column);
    return column;
  }
}

/**
 * Propagates the distributions of a corner's readings through its travel budget by Monte Carlo.
 * Source: JCGM 101:2008, clause 7; probabilities of conformity as JCGM 106:2012, clause 7.
 *
 * @param reserveWanted mm; @param wantedTravels free travel to compare z_c with, one probability each
 * Draws outside the layout's domain are counted, never turned into a number: they conform to nothing
 * and stand outside the intervals.
 */
export function drawCorner(
  { model, places }: CornerBudget,
  draws: SharedDraws,
  reserveWanted: number,
  wantedTravels: readonly WantedTravel[],
): CornerDraws {
  const { samples } = draws;
  const readings = placeMeans(places);
  const moving: number[] = [];
  const columns: Float64Array[] = [];
  for (const [place, { drawn }] of places.entries()) {
    if (drawn === null || (drawn.halfWidth === 0 && drawn.standardError === 0)) continue;
    moving.push(place);
    columns.push(draws.column(drawn));
  }
  const figureCount = model.hasLimits ? 6 : 2;
  const kept = Array.from({ length: figureCount }, () => new Float64Array(samples));
  const wanted = wantedTravels.map((travel) =>
    typeof travel === "number" ? new Float64Array(1).fill(travel) : travel,
  );
  const beyond = new Int32Array(wanted.length);
  const figures = new Float64Array(6);
  let inside = 0;
  let reserveEnough = 0;
  let reserveLeft = 0;
  for (let draw = 0; draw < samples; draw++) {
    for (let index = 0; index < moving.length; index++) {
      readings[moving[index] as number] = (columns[index] as Float64Array)[draw] as number;
    }
    if (!model.evaluate(readings, figures)) continue;
    for (let index = 0; index < figureCount; index++) {
      (kept[index] as Float64Array)[inside] = figures[index] as number;
    }
    inside++;
    const contact = figures[figure.contact] as number;
    for (let index = 0; index < wanted.length; index++) {
      const travels = wanted[index] as Float64Array;
      const travel = (travels.length === 1 ? travels[0] : travels[draw]) as number;
      if (contact >= travel) beyond[index] = (beyond[index] as number) + 1;
    }
    const reserve = figures[figure.reserve] as number;
    if (reserve >= reserveWanted) reserveEnough++;
    if (reserve >= 0) reserveLeft++;
  }
  const interval = (name: FigureName): Interval | null => {
    const values = kept[figure[name]];
    return values === undefined || inside === 0 ? null : coverageInterval(values, inside);
  };
  return {
    outsideShare: 1 - inside / samples,
    intervals: {
      contact: interval("contact"),
      fullStop: interval("fullStop"),
      hardLimit: interval("hardLimit"),
      reserve: interval("reserve"),
      spacer: interval("spacer"),
      taller: interval("taller"),
    },
    reserveWanted: model.hasLimits ? reserveEnough / samples : null,
    reserveAboveZero: model.hasLimits ? reserveLeft / samples : null,
    contactBeyond: Array.from(beyond, (count) => count / samples),
  };
}
