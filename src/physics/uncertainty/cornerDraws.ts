import { type FigureName, figure, figureCount } from "../budget/cornerModel.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { Interval } from "../fitment.ts";
import type { LayoutMotion } from "../kinematics/layoutMotion.ts";
import { CoverageIntervals } from "./coverageIntervals.ts";
import { ReadingBlocks } from "./readingBlocks.ts";
import type { SharedDraws } from "./sharedDraws.ts";

/** Free travel wanted, mm: one number, or one a draw where the ride data themselves are in doubt. */
export type WantedTravel = number | ((draw: number) => number);

/** What the draws say about one corner. Lengths mm, shares and probabilities 0…1 of all draws. */
export interface CornerDraws {
  /** Draws in which the readings give no suspension at all, or one that cannot reach its own stop. */
  readonly outsideShare: number;
  /** 95 % of the draws inside; null without limits, and for all where no draw is inside. */
  readonly intervals: { readonly [Name in FigureName]: Interval | null };
  /** P(reserve ≥ what is wanted) and P(reserve ≥ 0); null without limits. A draw outside does not conform. */
  readonly reserveWanted: number | null;
  readonly reserveAboveZero: number | null;
  /** P(z_c ≥ wanted travel), in the order asked for. */
  readonly contactBeyond: readonly number[];
}

/** What is counted, by whose share of all draws it is known. */
export const conformityFormulas = {
  reserve: "P(reserve ≥ wanted reserve)",
  contact: "P(z_c ≥ z_need), loaded",
} as const;

/** What the draws of one corner are compared with. */
export interface DrawRequest {
  readonly corner: CornerBudget;
  /** Free travel to compare z_c with, one probability each. */
  readonly wantedTravels: readonly WantedTravel[];
}

/**
 * Propagates the distributions of the readings of all corners through their travel budgets by Monte
 * Carlo, draw by draw, so that what two corners share is drawn once.
 * Source: JCGM 101:2008, clause 7; probabilities of conformity as JCGM 106:2012, clause 7.
 *
 * @param reserveWanted mm
 * Draws outside the layout's domain are counted, never turned into a number: they conform to nothing
 * and stand outside the intervals.
 */
export function drawCorners(
  requests: readonly DrawRequest[],
  draws: SharedDraws,
  reserveWanted: number,
): readonly CornerDraws[] {
  const tallies = requests.map(
    ({ corner, wantedTravels }) => new CornerTally(corner, draws, reserveWanted, wantedTravels),
  );
  const [first, second] = tallies;
  if (first === undefined) return [];
  const shared = second?.moveWith(first) === true;
  for (let draw = 0; draw < draws.samples; draw++) {
    const moved = first.moveTo(draw);
    if (moved) first.count(draw, first.motion);
    if (second === undefined) continue;
    if (!shared) {
      if (second.moveTo(draw)) second.count(draw, second.motion);
    } else if (moved) {
      second.standOff(draw, first.motion);
      second.count(draw, first.motion);
    }
  }
  return tallies.map((tally) => tally.result());
}

/** Where a corner's draws are counted. Nothing is allocated from draw to draw. */
class CornerTally {
  readonly motion: LayoutMotion;
  readonly #corner: CornerBudget;
  readonly #reserveWanted: number;
  readonly #samples: number;
  readonly #laidOut: ReadingBlocks;
  readonly #wanted: readonly WantedTravel[];
  readonly #beyond: Int32Array;
  readonly #figures = new Float64Array(figureCount);
  readonly #covered: CoverageIntervals;
  #inside = 0;
  #reserveEnough = 0;
  #reserveLeft = 0;

  constructor(
    corner: CornerBudget,
    draws: SharedDraws,
    reserveWanted: number,
    wantedTravels: readonly WantedTravel[],
  ) {
    this.motion = corner.model.motion;
    this.#corner = corner;
    this.#reserveWanted = reserveWanted;
    this.#samples = draws.samples;
    this.#laidOut = new ReadingBlocks(corner, draws);
    this.#wanted = wantedTravels;
    this.#beyond = new Int32Array(wantedTravels.length);
    this.#covered = new CoverageIntervals(corner.model.hasLimits ? figureCount : 2, draws.samples);
  }

  /**
   * Has the other corner's motion serve this one too where every geometry reading of both comes from the same
   * place, but for how far a stop on the arm stands off its pad; false where not.
   */
  moveWith(other: CornerTally): boolean {
    const geometry = ({ places }: CornerBudget) =>
      places.all
        .slice(0, places.geometryCount)
        .map(({ id }, place) => (place === places.standOff ? "" : id));
    const own = geometry(this.#corner);
    if (own.join() !== geometry(other.#corner).join()) return false;
    // Of an axle the budget itself takes track and spacing.
    if (this.#corner.linkage === "axle") return true;
    const { standOff } = this.#corner.places;
    this.#laidOut.leaveOut((place) => place < own.length && place !== standOff);
    return true;
  }

  /** Has the other corner's motion stand off its pad as this one does. */
  standOff(draw: number, motion: LayoutMotion): void {
    const { standOff } = this.#corner.places;
    if (standOff < 0) return;
    const from = this.#laidOut.readingsOf(draw);
    motion.standOffBy(this.#laidOut.block[from + standOff]);
  }

  /** Takes the readings of a draw and moves the layout to them; false where they give no motion. */
  moveTo(draw: number): boolean {
    const from = this.#laidOut.readingsOf(draw);
    return this.motion.set(this.#laidOut.block, from) === null;
  }

  count(draw: number, motion: LayoutMotion): void {
    const figures = this.#figures;
    const { model } = this.#corner;
    const from = this.#laidOut.readingsOf(draw);
    if (!model.evaluateMoved(this.#laidOut.block, figures, motion, from)) return;
    this.#covered.add(figures);
    this.#inside++;
    const contact = figures[figure.contact];
    for (let index = 0; index < this.#wanted.length; index++) {
      const wanted = this.#wanted[index];
      const travel = typeof wanted === "number" ? wanted : wanted(draw);
      if (contact >= travel) this.#beyond[index] = this.#beyond[index] + 1;
    }
    const reserve = figures[figure.reserve];
    if (reserve >= this.#reserveWanted) this.#reserveEnough++;
    if (reserve >= 0) this.#reserveLeft++;
  }

  /** To be called once, after the last draw. */
  result(): CornerDraws {
    const samples = this.#samples;
    const intervals = this.#covered.intervals();
    const interval = (name: FigureName) => intervals[figure[name]] ?? null;
    const { hasLimits } = this.#corner.model;
    return {
      outsideShare: 1 - this.#inside / samples,
      intervals: {
        contact: interval("contact"),
        fullStop: interval("fullStop"),
        hardLimit: interval("hardLimit"),
        reserve: interval("reserve"),
        spacer: interval("spacer"),
        taller: interval("taller"),
      },
      reserveWanted: hasLimits ? this.#reserveEnough / samples : null,
      reserveAboveZero: hasLimits ? this.#reserveLeft / samples : null,
      contactBeyond: Array.from(this.#beyond, (count) => count / samples),
    };
  }
}
