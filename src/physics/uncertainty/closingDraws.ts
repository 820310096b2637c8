import type { TravelMotion } from "../budget/handMotion.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import type { WantedTravel } from "./cornerDraws.ts";
import { ReadingBlocks } from "./readingBlocks.ts";
import type { SharedDraws } from "./sharedDraws.ts";

/** The closings that all stops asked about may come to, mm beyond the reading that says where a stop stands. */
export interface ClosingSpan {
  readonly least: number;
  readonly greatest: number;
}

/** Draws worked out at a time. */
export const stretch = 500;

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
  #outside = 0;

  /** @param unasked places of readings that the closing does not come from */
  constructor(
    corner: CornerBudget,
    draws: SharedDraws,
    unasked: readonly number[],
    closingOf: ClosingOf,
  ) {
    this.values = new Float64Array(draws.samples);
    this.#corner = corner;
    this.#blocks = new ReadingBlocks(corner, draws);
    // What was found by hand stands at the heights of the stop that was there.
    if (corner.places.hand === null) this.#blocks.leaveOut((place) => unasked.includes(place));
    this.#closingOf = closingOf;
  }

  /** Works out some more than the draws below `count`, where they are not known yet. */
  knowTo(count: number): void {
    if (count <= this.#known) return;
    const end = Math.min(this.values.length, Math.ceil(count / stretch) * stretch);
    for (; this.#known < end; this.#known++) {
      const closing = this.#closing(this.#known);
      this.values[this.#known] = closing;
      if (Number.isNaN(closing)) this.#outside++;
    }
  }

  /** Share of all draws that give no suspension. */
  outsideShare(): number {
    this.knowTo(this.values.length);
    return this.#outside / this.values.length;
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

/** Whether the closings of a span stay within a layout's reach, of the draws looked at so far. */
interface Reach {
  known: number;
  /** In some draw they do not: a closing before the limit does not tell whether a stop can be pressed at all. */
  escaped: boolean;
}

/** s(z_h − r), of a beam axle the lesser of both wheels and one, for all stops whose own lie within a span. */
export class LimitClosings extends DrawnClosings {
  readonly #reach: Reach;

  /**
   * @param reserve r, mm
   * @param reach of this span, whatever the limit
   */
  constructor(
    corner: CornerBudget,
    draws: SharedDraws,
    reserve: number,
    span: ClosingSpan,
    reach: Reach,
  ) {
    const found = new Float64Array(1);
    const { model, places } = corner;
    const { freeHeight, recordedHeight, usable, settle } = places;
    const unasked = [freeHeight, recordedHeight, usable, settle];
    super(corner, draws, unasked, (travel, motion, block, from, draw) => {
      const closing = model.closingBeforeLimit(block, motion, travel, reserve, from);
      if (draw < reach.known) return closing;
      const stands = block[from + places.stands];
      reach.known = draw + 1;
      reach.escaped ||= !(
        travel.wheelTravelInto(found, 0, stands + span.least) &&
        travel.wheelTravelInto(found, 0, stands + span.greatest)
      );
      return closing;
    });
    this.#reach = reach;
  }

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
  const { places } = corner;
  const { settle, stands, freeHeight, recordedHeight, usable, limits } = places;
  const found = new Float64Array(1);
  const unasked = [
    ...[stands, freeHeight, recordedHeight, usable],
    ...limits.flatMap(({ clearance, distance }) => [clearance, distance]),
  ];
  return new DrawnClosings(corner, draws, unasked, (travel, _, block, from, draw) => {
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
  readonly #reaches = new Map<string, Reach>();

  /** @param geometry the same for corners whose suspension is drawn from the same readings */
  beforeLimit(
    geometry: string,
    corner: CornerBudget,
    draws: SharedDraws,
    reserve: number,
    span: ClosingSpan,
  ): LimitClosings {
    const key = JSON.stringify([geometry, corner.corner.limits, reserve, span]);
    const reach = kept(this.#reaches, JSON.stringify([geometry, span]), () => ({
      known: 0,
      escaped: false,
    }));
    return kept(this.#limits, key, () => new LimitClosings(corner, draws, reserve, span, reach));
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

export function kept<Value>(known: Map<string, Value>, key: string, make: () => Value): Value {
  const value = known.get(key) ?? make();
  known.set(key, value);
  return value;
}
