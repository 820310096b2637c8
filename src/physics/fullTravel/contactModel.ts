import { cornerLayout } from "../budget/cornerLayout.ts";
import { CornerModel } from "../budget/cornerModel.ts";
import { type CornerPlace, cornerPlaces } from "../budget/cornerPlaces.ts";
import type { Corner, Fitment, Reading } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import { type Outcome, succeed } from "../outcome.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { checkedMean } from "../uncertainty/checkedMean.ts";
import {
  type DrawnReading,
  drawnReading,
  standardUncertainty,
} from "../uncertainty/drawnReading.ts";
import { centralSlopes } from "./differences.ts";
import type { ComparedPart } from "./fullTravelCheck.ts";

/** The height of the block that was put in the stop's place. */
export interface BlockHeight {
  readonly id: QuantityId;
  readonly reading: Reading;
}

/**
 * The contacts of a corner as its readings alone have them, nothing found by hand in it, for the stop
 * that they were taken with.
 *
 * Errors: those of `cornerLayout` and `cornerPlaces`; an impossible height of the block.
 */
export function contactModel(
  fitment: Fitment,
  corner: Corner,
  movement: "both" | "one",
  block: BlockHeight | null = null,
): Outcome<ContactModel> {
  const { fullTravel: _, spacerMm: __, recordedStop, ...rest } = fitment;
  const recorded: Fitment = { ...rest, stop: recordedStop ?? fitment.stop };
  const layout = cornerLayout(recorded, corner);
  if (!layout.ok) return layout;
  const places = cornerPlaces(recorded, corner, layout.value.places);
  if (!places.ok) return places;
  if (block !== null) {
    const height = checkedMean(block.reading, block.id, "length");
    if (!height.ok) return height;
  }
  const model = new CornerModel(recorded, corner, layout.value.motion, places.value, 0);
  return succeed(new ContactModel(model, recorded, corner, movement, block));
}

/**
 * Wheel travel at each contact as a function of a corner's readings: z(gap) where the stop meets its pad;
 * z(g + H − B) where a block of height B in its place does; reading/perWheel, z(reading) or the arm's own
 * travel at a limit, the least where there are several of its kind; z(g + δu) at full stop. One wheel
 * of a beam axle: those through the stop are 2T/(T + S) times as far. All mm from the ride height.
 */
export class ContactModel {
  readonly readings: readonly DrawnReading[];
  readonly #model: CornerModel;
  readonly #oneWheel: boolean;
  readonly #places: readonly CornerPlace[];
  readonly #blockPlace: number;
  readonly #means: Float64Array;

  constructor(
    model: CornerModel,
    fitment: Fitment,
    corner: Corner,
    movement: "both" | "one",
    block: BlockHeight | null,
  ) {
    const { all } = model.places;
    const blockPlace =
      block === null ? [] : [{ ...block, drawn: drawnReading(block.id, block.reading) }];
    this.#model = model;
    this.#oneWheel = movement === "one" && layoutRegistry[fitment.layout.kind].joinsWheels;
    this.#blockPlace = block === null ? -1 : all.length;
    this.#places = [...all, ...blockPlace];
    this.#means = Float64Array.from(this.#places, ({ drawn }) => drawn.mean);
    const readings = new Map<string, DrawnReading>();
    for (const [place, { drawn }] of this.#places.entries()) {
      // With a gap measured, the stop's free height has no part in where things touch but by a block.
      const hasPart =
        place !== model.places.freeHeight || corner.gap === undefined || block !== null;
      if (hasPart && place !== model.places.settle) readings.set(drawn.id, drawn);
    }
    this.readings = [...readings.values()];
  }

  /**
   * The travel at each part, mm, with one reading (by its id) at another value and the rest at their
   * means. NaN for what the layout cannot reach then.
   */
  travels(
    parts: readonly ComparedPart[],
    changed?: { readonly id: QuantityId; readonly value: number },
  ): Float64Array {
    const values = Float64Array.from(this.#means);
    for (const [place, { drawn }] of this.#places.entries()) {
      if (drawn.id === changed?.id) values[place] = changed.value;
    }
    if (this.#model.motion.set(values) !== null) {
      return new Float64Array(parts.length).fill(Number.NaN);
    }
    return Float64Array.from(parts, (part) => this.#travel(part, values));
  }

  #travel(part: ComparedPart, values: Float64Array): number {
    const model = this.#model;
    const { motion, places } = model;
    const share = this.#oneWheel ? model.oneWheelShare(values) : 1;
    switch (part) {
      case "stop":
        return motion.wheelTravel(model.gap(values)) / share;
      case "block": {
        const height = values[this.#blockPlace] ?? Number.NaN;
        return motion.wheelTravel(model.blockClosing(values, height)) / share;
      }
      case "fullStop":
        return motion.wheelTravel(model.fullStopClosing(values)) / share;
      default: {
        let least = Number.NaN;
        for (const [index, { kind }] of places.limits.entries()) {
          if (kind !== part) continue;
          const own = model.limitTravel(index, values, motion, motion);
          const travel = model.isAtWheel(index) ? own : own / share;
          if (!(travel >= least)) least = Number.isNaN(travel) ? least : travel;
        }
        return least;
      }
    }
  }

  /**
   * ∂(travel)/∂(reading) at the means, one row a reading, by central differences over ±u (±0.01 where
   * u is less), as JCGM 100:2008, 5.1.3 note 2. Where one side is out of reach the other is taken
   * alone; where both are, 0.
   */
  sensitivities(parts: readonly ComparedPart[]): readonly Float64Array[] {
    const middle = this.travels(parts);
    return this.readings.map((reading) => {
      const { id, mean } = reading;
      const step = Math.max(standardUncertainty(reading), 0.01);
      const above = this.travels(parts, { id, value: mean + step });
      const below = this.travels(parts, { id, value: mean - step });
      return centralSlopes(below, middle, above, step);
    });
  }
}
