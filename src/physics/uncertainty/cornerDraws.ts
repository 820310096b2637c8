import * as messages from "../../words/compiled/physics/uncertainty.ts";
import { ApartFromStop, type FigureName, figure, figureCount } from "../budget/cornerModel.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { Interval } from "../fitment.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
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
  reserve: messages.pReserveWantedReserve,
  contact: messages.pZCZ,
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
  const steps = drawCornersSteps(requests, draws, reserveWanted);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Draws between two looks at what else there is to do. */
const stretch = 1000;

/**
 * The same, yielding now and then. The corners may be those of several stops and heights on one vehicle:
 * those whose suspension is drawn from the same readings are moved together, to the last digit as each alone.
 */
export function* drawCornersSteps(
  requests: readonly DrawRequest[],
  draws: SharedDraws,
  reserveWanted: number,
): Generator<void, readonly CornerDraws[], void> {
  const tallies = requests.map(
    ({ corner, wantedTravels }) => new CornerTally(corner, draws, reserveWanted, wantedTravels),
  );
  const groups = movedTogether(tallies);
  for (let from = 0; from < draws.samples; from += stretch) {
    const end = Math.min(from + stretch, draws.samples);
    for (let index = 0; index < groups.length; index++) {
      countGroup(groups[index] as MovedGroup, from, end);
    }
    yield;
  }
  return tallies.map((tally) => tally.result());
}

/** Corners that one motion serves, and the one whose motion it is. */
interface MovedGroup {
  readonly leader: CornerTally;
  readonly followers: readonly CornerTally[];
}

function movedTogether(tallies: readonly CornerTally[]): readonly MovedGroup[] {
  const groups: { leader: CornerTally; followers: CornerTally[] }[] = [];
  for (const tally of tallies) {
    const group = groups.find(({ leader }) => tally.moveWith(leader));
    if (group === undefined) groups.push({ leader: tally, followers: [] });
    else {
      const all = [group.leader, ...group.followers];
      tally.takeFrom(all.find((each) => each.apartKey === tally.apartKey) ?? null);
      group.followers.push(tally);
    }
  }
  return groups;
}

function countGroup({ leader, followers }: MovedGroup, from: number, end: number): void {
  const { motion } = leader;
  for (let draw = from; draw < end; draw++) {
    if (!leader.moveTo(draw)) continue;
    leader.count(draw, motion);
    for (let index = 0; index < followers.length; index++) {
      const follower = followers[index] as CornerTally;
      follower.standOff(draw, motion);
      follower.count(draw, motion);
    }
  }
}

/** Where a corner's draws are counted. Nothing is allocated from draw to draw. */
class CornerTally {
  readonly motion: LayoutMotion;
  /** The same for corners that are alike in all but the stop asked about. */
  readonly apartKey: string;
  readonly #apart = new ApartFromStop();
  #apartOf = -1;
  /** Which corner's `#apart` serves this one too. */
  #apartFrom: CornerTally = this;
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
    this.apartKey = apartKeyOf(corner);
    this.#corner = corner;
    this.#reserveWanted = reserveWanted;
    this.#samples = draws.samples;
    this.#laidOut = new ReadingBlocks(corner, draws);
    this.#wanted = wantedTravels;
    this.#beyond = new Int32Array(wantedTravels.length);
    this.#covered = new CoverageIntervals(corner.model.hasLimits ? figureCount : 2, draws.samples);
  }

  /**
   * Has the other corner's motion serve this one too where every geometry reading of both is drawn alike,
   * but for how far a stop on the arm stands off its pad; false where not.
   */
  moveWith(other: CornerTally): boolean {
    const geometry = ({ places }: CornerBudget) =>
      places.all
        .slice(0, places.geometryCount)
        .map(({ drawn }, place) => (place === places.standOff ? "" : drawn));
    const own = geometry(this.#corner);
    if (JSON.stringify(own) !== JSON.stringify(geometry(other.#corner))) return false;
    // Of an axle the budget itself takes track and spacing.
    if (this.#corner.linkage === "axle") return true;
    const { standOff } = this.#corner.places;
    this.#laidOut.leaveOut((place) => place < own.length && place !== standOff);
    return true;
  }

  /** Takes what does not depend on the stop from a corner that is alike in it, and lays out only its own. */
  takeFrom(other: CornerTally | null): void {
    if (other === null) return;
    this.#apartFrom = other;
    const { standOff, stands, ...heights } = this.#corner.places;
    const { freeHeight, recordedHeight, usable, settle } = heights;
    const own = [standOff, stands, freeHeight, recordedHeight, usable, settle];
    this.#laidOut.leaveOut((place) => !own.includes(place));
  }

  /** What of this draw does not depend on the stop; the motion stands as the draw has it. */
  #apartAt(draw: number, motion: LayoutMotion): ApartFromStop {
    if (this.#apartOf !== draw) {
      const from = this.#laidOut.readingsOf(draw);
      this.#corner.model.apartFromStop(this.#laidOut.block, motion, this.#apart, from);
      this.#apartOf = draw;
    }
    return this.#apart;
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
    const apart = this.#apartFrom.#apartAt(draw, motion);
    if (!model.evaluateWith(this.#laidOut.block, figures, apart, from)) return;
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

/** All that a corner's draws come from, but for the heights and the compression of the stop asked about. */
function apartKeyOf({ corner, places }: CornerBudget): string {
  const { all, freeHeight, recordedHeight, usable, settle, hand, limits } = places;
  const ofStop = [usable, settle];
  // What was found by hand was found with the stop that stood there.
  if (hand === null) ofStop.push(freeHeight, recordedHeight);
  else if (recordedHeight >= 0) ofStop.push(freeHeight);
  return JSON.stringify([
    corner.side,
    all.filter((_, place) => !ofStop.includes(place)).map(({ drawn }) => drawn),
    limits.map(({ kind, at, perWheel }) => [kind, at, perWheel]),
    hand !== null,
  ]);
}
