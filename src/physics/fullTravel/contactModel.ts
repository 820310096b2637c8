import { CornerModel } from "../budget/cornerModel.ts";
import { type CornerPlace, checkedPlan, placeMeans } from "../budget/cornerReadings.ts";
import type { Corner, Fitment, TouchedPart } from "../fitment.ts";
import type { LayoutMotion } from "../kinematics/layoutMotion.ts";
import { type DrawnReading, standardUncertainty } from "../uncertainty/drawnReading.ts";

/**
 * Wheel travel at each contact as a function of a corner's readings: z(gap) where the stop meets its
 * pad; reading/perWheel or z(reading) at a limit, the least where there are several of its kind; with
 * the gap and the usable compression z(g + δu) at full stop. All mm from the ride height.
 */
export class ContactModel {
  readonly readings: readonly DrawnReading[];
  readonly #corner: Corner;
  readonly #places: readonly CornerPlace[];
  readonly #motion: LayoutMotion;
  readonly #model: CornerModel;
  readonly #usable: number;
  readonly #means: Float64Array;

  constructor(
    fitment: Fitment,
    corner: Corner,
    places: readonly CornerPlace[],
    movement: "both" | "one",
  ) {
    const readings = new Map<string, DrawnReading>();
    for (const { drawn, name } of places) {
      if (drawn !== null && (name !== "freeHeight" || corner.gap === undefined))
        readings.set(drawn.id, drawn);
    }
    this.readings = [...readings.values()];
    this.#corner = corner;
    this.#places = places;
    this.#motion = checkedPlan(fitment, corner, movement).motion;
    this.#model = new CornerModel(fitment, corner, 0);
    this.#usable = fitment.stop.usableCompressionMm;
    this.#means = placeMeans(places);
  }

  /**
   * The travel at each part, and at full stop, mm, with one reading (by its id) at another value and
   * the rest at their means. NaN for what the layout cannot reach then.
   */
  travels(
    parts: readonly (TouchedPart | "fullStop")[],
    changed?: { readonly id: string; readonly value: number },
  ): Float64Array {
    const values = Float64Array.from(this.#means);
    for (const [place, { drawn }] of this.#places.entries()) {
      if (changed !== undefined && drawn?.id === changed.id) values[place] = changed.value;
    }
    if (this.#motion.set(values) !== null) return new Float64Array(parts.length).fill(Number.NaN);
    return Float64Array.from(parts, (part) => this.#travel(part, values));
  }

  #travel(part: TouchedPart | "fullStop", values: Float64Array): number {
    const gap = this.#model.gap(values);
    if (part === "stop") return this.#motion.wheelTravel(gap);
    if (part === "fullStop") return this.#motion.wheelTravel(gap + this.#usable);
    let least = Number.NaN;
    for (const [index, { kind, at, perWheel = 1 }] of this.#corner.limits.entries()) {
      if (kind !== part) continue;
      const reading = values[this.#model.limitPlace(index)] as number;
      const travel = at === "stop" ? this.#motion.wheelTravel(reading) : reading / perWheel;
      if (!(travel >= least)) least = Number.isNaN(travel) ? least : travel;
    }
    return least;
  }

  /**
   * ∂(travel)/∂(reading) at the means, one row a reading, by central differences over ±u (±0.01 where
   * u is less), as JCGM 100:2008, 5.1.3 note 2. Where one side is out of reach the other is taken
   * alone; where both are, 0.
   */
  sensitivities(parts: readonly (TouchedPart | "fullStop")[]): readonly Float64Array[] {
    const middle = this.travels(parts);
    return this.readings.map((reading) => {
      const { id, mean } = reading;
      const step = Math.max(standardUncertainty(reading), 0.01);
      const above = this.travels(parts, { id, value: mean + step });
      const below = this.travels(parts, { id, value: mean - step });
      return Float64Array.from(middle, (at, index) => {
        const [up, down] = [above[index] as number, below[index] as number];
        const slope = (up - down) / (2 * step);
        if (Number.isFinite(slope)) return slope;
        const oneSided = Number.isFinite(up) ? (up - at) / step : (at - down) / step;
        return Number.isFinite(oneSided) ? oneSided : 0;
      });
    });
  }
}
