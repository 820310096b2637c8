import type { Corner, Fitment } from "../fitment.ts";
import type { LayoutMotion } from "../kinematics/layoutMotion.ts";
import { checkedPlan } from "./cornerReadings.ts";

/** The figures of a travel budget, by their place in what `CornerModel.evaluate` fills. mm. */
export const figure = {
  contact: 0,
  fullStop: 1,
  hardLimit: 2,
  reserve: 3,
  spacer: 4,
  taller: 5,
} as const;

export type FigureName = keyof typeof figure;

/**
 * The travel budget of one corner as a function of its readings, the same for
 * the means, every draw and every difference. Nothing is allocated.
 *
 * With g the gap, δu the usable compression, H the free height and r the reserve wanted:
 * z_c = z(g); z_u = z(g + δu); z_h = the least of all hard limits, at the wheel reading/perWheel, at
 * the stop z(reading), where a stop limit out of reach never touches; reserve = z_h − z_u;
 * spacer Δ = g + δu − s(z_h − r); taller stop of the same build Δ/(1 − δu/H).
 */
export class CornerModel {
  readonly hasLimits: boolean;
  readonly motion: LayoutMotion;
  /** How many places the layout itself takes; the gap's place is the next. */
  readonly geometryCount: number;
  readonly #usable: number;
  readonly #reserveWanted: number;
  /** 1 where what was measured is longer than the gap by the stop's height. */
  readonly #heightShare: number;
  /** Of the height of the stop that the gap was measured with; null where it is this one or enters by no gap. */
  readonly #recordedPlace: number | null;
  readonly #spacer: number;
  /** Closing per wheel travel of each limit; 0 for one measured at the stop. */
  readonly #perWheel: Float64Array;

  constructor(fitment: Fitment, corner: Corner, reserveWanted: number) {
    const plan = checkedPlan(fitment, corner);
    this.motion = plan.motion;
    this.hasLimits = corner.limits.length > 0;
    this.geometryCount = plan.places.length;
    this.#usable = fitment.stop.usableCompressionMm;
    this.#reserveWanted = reserveWanted;
    this.#heightShare = corner.gap === undefined || fitment.recordedStop !== undefined ? 1 : 0;
    this.#recordedPlace =
      corner.gap === undefined || fitment.recordedStop === undefined
        ? null
        : this.limitPlace(corner.limits.length);
    this.#spacer = fitment.spacerMm ?? 0;
    this.#perWheel = Float64Array.from(corner.limits, (limit) =>
      limit.at === "stop" ? 0 : (limit.perWheel ?? 1),
    );
  }

  /**
   * Fills `figures` (see `figure`) from readings in the order of `cornerReadings` that stand in the array
   * from `from` on. Without limits all from the hard limit on are 0. False, where any figure is out of
   * the layout's reach.
   */
  evaluate(readings: Float64Array, figures: Float64Array, from = 0): boolean {
    const { motion } = this;
    return (
      motion.set(readings, from) === null && this.evaluateMoved(readings, figures, motion, from)
    );
  }

  /** g of the stop asked about, mm; see `gapOf`. */
  gap(readings: Float64Array, from = 0): number {
    const place = from + this.geometryCount;
    return (
      (readings[place] as number) +
      (this.#recordedPlace === null ? 0 : (readings[from + this.#recordedPlace] as number)) -
      this.#heightShare * (readings[place + 1] as number) -
      this.#spacer
    );
  }

  /** The place of a hard limit's reading. */
  limitPlace(index: number): number {
    return this.geometryCount + 2 + index;
  }

  /** The same with a motion already set to these readings: another corner's, of the same geometry. */
  evaluateMoved(
    readings: Float64Array,
    figures: Float64Array,
    motion: LayoutMotion,
    from = 0,
  ): boolean {
    const gap = this.gap(readings, from);
    const pressed = gap + this.#usable;
    if (!motion.wheelTravelInto(figures, figure.contact, gap)) return false;
    if (!motion.wheelTravelInto(figures, figure.fullStop, pressed)) return false;
    if (!this.hasLimits) {
      figures.fill(0, figure.hardLimit);
      return true;
    }
    let hardLimit = Number.POSITIVE_INFINITY;
    for (let index = 0; index < this.#perWheel.length; index++) {
      const reading = readings[from + this.limitPlace(index)] as number;
      const perWheel = this.#perWheel[index] as number;
      const travel = perWheel === 0 ? motion.wheelTravel(reading) : reading / perWheel;
      if (travel < hardLimit) hardLimit = travel;
    }
    // The closing at the limit, less what is wanted, stands for a moment in the spacer's place.
    if (!motion.closingInto(figures, figure.spacer, hardLimit - this.#reserveWanted)) return false;
    const freeHeight = readings[from + this.geometryCount + 1] as number;
    const spacer = pressed - (figures[figure.spacer] as number);
    const solidShare = 1 - this.#usable / freeHeight;
    figures[figure.hardLimit] = hardLimit;
    figures[figure.reserve] = hardLimit - (figures[figure.fullStop] as number);
    figures[figure.spacer] = spacer;
    figures[figure.taller] = spacer / solidShare;
    return solidShare > 0;
  }
}
