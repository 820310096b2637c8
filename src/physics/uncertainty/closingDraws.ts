import type { CornerPlace } from "../budget/cornerPlaces.ts";
import type { TravelMotion } from "../budget/handMotion.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import type { WantedTravel } from "./cornerDraws.ts";
import type { DrawnReading } from "./drawnReading.ts";
import { ReadingBlocks } from "./readingBlocks.ts";
import type { SharedDraws } from "./sharedDraws.ts";

/** The closings that all stops asked about may come to, mm beyond the reading that says where a stop stands. */
export interface ClosingSpan {
  readonly least: number;
  readonly greatest: number;
}

/** Draws worked out at a time. */
const stretch = 500;

/** How one draw's closing is found from its readings, with the motion set to them. */
type ClosingOf = (
  travel: TravelMotion,
  motion: LayoutMotion,
  block: Float64Array,
  from: number,
  draw: number,
) => number;

/** One closing a draw, mm, worked out as far as it was asked for; NaN where the draw gives no motion. */
export class DrawnClosings {
  readonly values: Float64Array;
  readonly #corner: CornerBudget;
  readonly #blocks: ReadingBlocks;
  readonly #closingOf: ClosingOf;
  #known = 0;

  constructor(corner: CornerBudget, draws: SharedDraws, closingOf: ClosingOf) {
    this.values = new Float64Array(draws.samples);
    this.#corner = corner;
    this.#blocks = new ReadingBlocks(corner, draws);
    this.#closingOf = closingOf;
  }

  /** Works out some more than the draws below `count`, where they are not known yet. */
  knowTo(count: number): void {
    if (count <= this.#known) return;
    const end = Math.min(this.values.length, Math.ceil(count / stretch) * stretch);
    for (; this.#known < end; this.#known++) this.values[this.#known] = this.#closing(this.#known);
  }

  #closing(draw: number): number {
    const from = this.#blocks.readingsOf(draw);
    const { block } = this.#blocks;
    const { model } = this.#corner;
    if (model.motion.set(block, from) !== null) return Number.NaN;
    const travel = model.led(block, model.motion, from);
    return travel === null ? Number.NaN : this.#closingOf(travel, model.motion, block, from, draw);
  }
}

/**
 * Closings before the limit, for all stops whose own lie within a span. In a draw in which the span leaves
 * the layout's reach a closing does not tell whether the stop can be pressed at all: `escaped`.
 */
export class LimitClosings extends DrawnClosings {
  readonly #reach: { escaped: boolean };

  /**
   * s(z_h − r), of a beam axle the lesser of both wheels and one.
   *
   * @param reserve r, mm
   */
  constructor(corner: CornerBudget, draws: SharedDraws, reserve: number, span: ClosingSpan) {
    const reach = { escaped: false };
    const found = new Float64Array(1);
    const { model, places } = corner;
    super(corner, draws, (travel, motion, block, from) => {
      const closing = model.closingBeforeLimit(block, motion, travel, reserve, from);
      const stands = block[from + places.stands];
      reach.escaped ||= !(
        travel.wheelTravelInto(found, 0, stands + span.least) &&
        travel.wheelTravelInto(found, 0, stands + span.greatest)
      );
      return closing;
    });
    this.#reach = reach;
  }

  /** Of the draws worked out so far. */
  get escaped(): boolean {
    return this.#reach.escaped;
  }
}

/** s(z_need − f); infinite where the wheel cannot rise so far. */
function travelClosings(
  corner: CornerBudget,
  draws: SharedDraws,
  wanted: WantedTravel,
): DrawnClosings {
  const { settle } = corner.places;
  const found = new Float64Array(1);
  return new DrawnClosings(corner, draws, (travel, _, block, from, draw) => {
    const friction = settle < 0 ? 0 : block[from + settle];
    const z = (typeof wanted === "number" ? wanted : wanted(draw)) - friction;
    if (travel.closingInto(found, 0, z)) return found[0];
    return z < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  });
}

/**
 * What of a vehicle's draws is the same whichever stop is asked about, at whatever height: z and s rise with
 * each other, so that z_u ≤ z_h − r is g + δu ≤ s(z_h − r), and z_c + f ≥ z_need is g ≥ s(z_need − f).
 * One closing a draw then decides for every stop and spacer, instead of a travel budget each.
 */
export class ClosingDraws {
  readonly #limits = new Map<string, LimitClosings>();
  readonly #travels = new Map<string, DrawnClosings>();

  /** @param geometry the same for corners whose suspension is drawn from the same readings */
  beforeLimit(
    geometry: string,
    corner: CornerBudget,
    draws: SharedDraws,
    reserve: number,
    span: ClosingSpan,
  ): LimitClosings {
    const key = JSON.stringify([geometry, corner.corner.limits, reserve, span]);
    return kept(this.#limits, key, () => new LimitClosings(corner, draws, reserve, span));
  }

  /** @param wanted its travel, and what it is the same for */
  atTravel(
    geometry: string,
    corner: CornerBudget,
    draws: SharedDraws,
    wanted: { readonly key: string; readonly travel: WantedTravel },
  ): DrawnClosings {
    const key = `${geometry} ${wanted.key}`;
    return kept(this.#travels, key, () => travelClosings(corner, draws, wanted.travel));
  }
}

function kept<Value>(known: Map<string, Value>, key: string, make: () => Value): Value {
  const value = known.get(key) ?? make();
  known.set(key, value);
  return value;
}

/** One stop at one height against the closings of its corner: the share of the draws that conforms. */
export class StopDraws {
  readonly #samples: number;
  readonly #spacer: number;
  readonly #stands: Float64Array;
  readonly #recorded: Float64Array | null;
  readonly #height: Float64Array | null;
  readonly #usable: Float64Array;

  /** @param corner of this stop and spacer */
  constructor({ model, places }: CornerBudget, columns: DrawnColumns) {
    const column = (place: number) => columns.of((places.all[place] as CornerPlace).drawn);
    const { spacerMm, plusRecorded, lessHeight } = model.gapParts;
    this.#samples = columns.samples;
    this.#spacer = spacerMm;
    this.#stands = column(places.stands);
    this.#recorded = plusRecorded ? column(places.recordedHeight) : null;
    this.#height = lessHeight ? column(places.freeHeight) : null;
    this.#usable = column(places.usable);
  }

  /** P(reserve ≥ r), by `beforeLimit(r)`; −1 once it is certain to be below `least`. */
  reserveKept(closings: DrawnClosings, least: number): number {
    const usable = this.#usable;
    const { values } = closings;
    return this.#share(least, (from, end) => {
      closings.knowTo(end);
      let lost = 0;
      for (let draw = from; draw < end; draw++) {
        const pressed = this.#gap(draw) + usable[draw];
        if (!(pressed <= values[draw])) lost++;
      }
      return lost;
    });
  }

  /** P(z_c ≥ z_need), by `atTravel`; `inside` tells the draws that give no suspension. */
  travelKept(inside: DrawnClosings, closings: DrawnClosings, least: number): number {
    const { values } = closings;
    const known = inside.values;
    return this.#share(least, (from, end) => {
      inside.knowTo(end);
      closings.knowTo(end);
      let lost = 0;
      for (let draw = from; draw < end; draw++) {
        if (!(this.#gap(draw) >= values[draw] && !Number.isNaN(known[draw]))) lost++;
      }
      return lost;
    });
  }

  /** Share of the draws that give no suspension. */
  outside(inside: DrawnClosings): number {
    inside.knowTo(this.#samples);
    let outside = 0;
    for (const closing of inside.values) if (Number.isNaN(closing)) outside++;
    return outside / this.#samples;
  }

  /** As `CornerModel.gap`, to the last digit. */
  #gap(draw: number): number {
    let gap = this.#stands[draw] - this.#spacer;
    if (this.#recorded !== null) gap += this.#recorded[draw];
    if (this.#height !== null) gap -= this.#height[draw];
    return gap;
  }

  #share(least: number, lostBetween: (from: number, end: number) => number): number {
    const samples = this.#samples;
    let kept = samples;
    for (let from = 0; from < samples; from += stretch) {
      kept -= lostBetween(from, Math.min(samples, from + stretch));
      if (kept / samples < least) return -1;
    }
    return kept / samples;
  }
}

/** All draws of single readings, each worked out once. */
export class DrawnColumns {
  readonly samples: number;
  readonly #draws: SharedDraws;
  readonly #known = new Map<string, Float64Array>();

  constructor(draws: SharedDraws) {
    this.#draws = draws;
    this.samples = draws.samples;
  }

  of(reading: DrawnReading): Float64Array {
    const key = JSON.stringify(reading);
    return kept(this.#known, key, () => {
      const drawn = this.#draws.of(reading);
      const column = new Float64Array(this.samples);
      for (let draw = 0; draw < column.length; draw++) column[draw] = drawn.at(draw);
      return column;
    });
  }
}
