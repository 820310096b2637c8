import type { CornerPlace } from "../budget/cornerPlaces.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import { type DrawnClosings, kept } from "./closingDraws.ts";
import type { DrawnReading } from "./drawnReading.ts";
import { KeptShare } from "./keptShare.ts";
import type { SharedDraws } from "./sharedDraws.ts";

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

  /** P(reserve ≥ r), by `beforeLimit(r)`. */
  reserveKept(closings: DrawnClosings): KeptShare {
    const usable = this.#usable;
    const { values } = closings;
    return new KeptShare(this.#samples, (from, end) => {
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
  travelKept(inside: DrawnClosings, closings: DrawnClosings): KeptShare {
    const { values } = closings;
    const known = inside.values;
    return new KeptShare(this.#samples, (from, end) => {
      inside.knowTo(end);
      closings.knowTo(end);
      let lost = 0;
      for (let draw = from; draw < end; draw++) {
        if (!(this.#gap(draw) >= values[draw] && !Number.isNaN(known[draw]))) lost++;
      }
      return lost;
    });
  }

  /** As `CornerModel.gap`, to the last digit. */
  #gap(draw: number): number {
    let gap = this.#stands[draw] - this.#spacer;
    if (this.#recorded !== null) gap += this.#recorded[draw];
    if (this.#height !== null) gap -= this.#height[draw];
    return gap;
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
