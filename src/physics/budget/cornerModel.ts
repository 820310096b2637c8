import type { Corner, Fitment } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import type { CornerPlaces, LimitPlaces } from "./cornerPlaces.ts";
import { HandMotion, type TravelMotion } from "./handMotion.ts";
import { travelByHeights, wheelLimitTravel } from "./limitTravel.ts";
import {
  oneWheelReserve,
  oneWheelShareOf,
  oneWheelTarget,
  reserveOf,
  spacerHeightOf,
  tallerHeightOf,
  targetTravel,
  usableShare,
} from "./reserve.ts";

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

export const figureCount = 6;

/** One of the figures that `CornerModel.evaluate` has filled, mm. */
export function figureIn(figures: Float64Array, name: FigureName): number {
  return figures[figure[name]];
}

/** What of one draw of a corner is the same whichever stop is asked about. Lengths mm. */
export class ApartFromStop {
  /** The motion led through the contacts found by hand; null where they give none. */
  travel: TravelMotion | null = null;
  /** z_w, the least limit at the wheel; of all limits z_h; infinite where there is none. */
  atWheel = 0;
  hardLimit = 0;
  /** (T + S)/(2T) where one wheel of a beam axle counts, else 1. */
  share = 1;
  /** s(z_h − r); NaN out of reach. */
  closing = 0;
}

/**
 * The travel budget of one corner as a function of its quantities, the same for
 * the means, every draw and every difference. Nothing is allocated.
 *
 * With g the gap of the stop asked about, δu its usable compression, H its free height, f friction and r
 * the reserve wanted: z_c = z(g) + f; z_u = z(g + δu); z_h = the least of all hard limits: at the wheel
 * reading/perWheel, at the stop z(reading), on the arm the travel at which that point has risen by the
 * reading, by hand the travel found. Reserve = z_h − z_u; spacer Δ = g + δu − s(z_h − r); taller stop of
 * the same build Δ/(1 − δu/H). A limit that is out of reach never touches.
 *
 * Beam axle with track T and stop spacing S: one wheel up, z is 2T/(T + S) times that of both wheels for
 * the same closing. A limit at the wheel is met by the worse of the two, so that the reserve is the lesser
 * of z_h − z_u and z_w − z_u·2T/(T + S), z_w the least limit at the wheel; spacer and taller likewise.
 *
 * Contacts found by hand lead the motion (`HandMotion`); their closings are those of the stop, and of the
 * block in its place, that stood there when they were found.
 */
export class CornerModel {
  readonly hasLimits: boolean;
  readonly motion: LayoutMotion;
  readonly places: CornerPlaces;
  readonly #reserveWanted: number;
  /** Limits measured at the wheel itself or found by hand there, and the others. */
  readonly #atWheel: readonly LimitPlaces[];
  readonly #elsewhere: readonly LimitPlaces[];
  /** What was measured is longer than the gap by the height of the stop asked about. */
  readonly #lessHeight: boolean;
  /** A gap was measured with another stop. */
  readonly #plusRecorded: boolean;
  /** What was measured is longer than the gap by the height of the stop that stood there. */
  readonly #apart: boolean;
  readonly #spacer: number;
  readonly #hand: HandMotion | null;
  /** Places of track and stop spacing of a beam axle; −1 elsewhere. */
  readonly #track: number;
  readonly #spacing: number;
  readonly #found = new Float64Array(1);
  readonly #apartFromStop = new ApartFromStop();

  constructor(
    fitment: Fitment,
    corner: Corner,
    motion: LayoutMotion,
    places: CornerPlaces,
    reserveWanted: number,
  ) {
    this.motion = motion;
    this.places = places;
    this.hasLimits = places.limits.length > 0;
    const isAtWheel = ({ at }: LimitPlaces) => at === "wheel" || at === "hand";
    this.#atWheel = places.limits.filter(isAtWheel);
    this.#elsewhere = places.limits.filter((limit) => !isAtWheel(limit));
    this.#reserveWanted = reserveWanted;
    this.#apart = corner.gap === undefined;
    this.#plusRecorded = !this.#apart && fitment.recordedStop !== undefined;
    this.#lessHeight = this.#apart || this.#plusRecorded;
    this.#spacer = fitment.spacerMm ?? 0;
    this.#hand = places.hand === null ? null : new HandMotion(motion);
    const isAxle = layoutRegistry[fitment.layout.kind].joinsWheels;
    const placeOf = (name: string) =>
      isAxle ? places.all.findIndex(({ id }) => id === name || id.endsWith(`.${name}`)) : -1;
    this.#track = placeOf("track");
    this.#spacing = placeOf("stopSpacing");
  }

  /** What `gap` adds and takes away besides the reading that says where the stop stands. */
  get gapParts(): { spacerMm: number; plusRecorded: boolean; lessHeight: boolean } {
    return {
      spacerMm: this.#spacer,
      plusRecorded: this.#plusRecorded,
      lessHeight: this.#lessHeight,
    };
  }

  /** g of the stop asked about, mm; see `gapOf`. */
  gap(readings: Float64Array, from = 0): number {
    const { stands, freeHeight, recordedHeight } = this.places;
    let gap = readings[from + stands] - this.#spacer;
    if (this.#plusRecorded) gap += readings[from + recordedHeight];
    if (this.#lessHeight) gap -= readings[from + freeHeight];
    return gap;
  }

  /** Closing at which the stop asked about is fully compressed, mm. */
  fullStopClosing(readings: Float64Array): number {
    return this.gap(readings) + readings[this.places.usable];
  }

  /** g of the stop that stood there when the readings were taken, mm; see `measuredGapOf`. */
  measuredGap(readings: Float64Array, from = 0): number {
    const stands = readings[from + this.places.stands];
    return this.#apart ? stands - this.#measuredHeight(readings, from) : stands;
  }

  #measuredHeight(readings: Float64Array, from: number): number {
    const { freeHeight, recordedHeight } = this.places;
    return readings[from + (recordedHeight < 0 ? freeHeight : recordedHeight)];
  }

  /** Closing at which the block in the stop's place was met, mm. */
  blockClosing(readings: Float64Array, blockHeight: number, from = 0): number {
    return this.measuredGap(readings, from) + this.#measuredHeight(readings, from) - blockHeight;
  }

  /**
   * The motion led through the contacts found by hand, or the layout's own where there are none; null
   * where the contacts give none. `motion` is set to these readings.
   */
  led(readings: Float64Array, motion: LayoutMotion, from = 0): TravelMotion | null {
    const hand = this.#hand;
    const { hand: places } = this.places;
    if (hand === null || places === null) return motion;
    const { atRide } = places;
    const met = hand.lead(
      motion,
      this.measuredGap(readings, from),
      handTravel(readings, from, atRide, places.stop),
      this.blockClosing(readings, readAt(readings, from, places.blockHeight), from),
      handTravel(readings, from, atRide, places.block),
      readAt(readings, from, places.beyond),
    );
    return met ? hand : null;
  }

  /**
   * Fills `figures` (see `figure`) from quantities in the order of `cornerPlaces` that stand in the array
   * from `from` on. Without limits all from the hard limit on are 0. False, where any figure is out of
   * the layout's reach.
   */
  evaluate(readings: Float64Array, figures: Float64Array, from = 0): boolean {
    const { motion } = this;
    return (
      motion.set(readings, from) === null && this.evaluateMoved(readings, figures, motion, from)
    );
  }

  /** The same with a motion already set to these readings: another corner's, of the same geometry. */
  evaluateMoved(
    readings: Float64Array,
    figures: Float64Array,
    motion: LayoutMotion,
    from = 0,
  ): boolean {
    this.apartFromStop(readings, motion, this.#apartFromStop, from);
    return this.evaluateWith(readings, figures, this.#apartFromStop, from);
  }

  /**
   * Fills all that does not depend on the stop asked about, the same for every stop and spacer where their
   * corners' other readings are.
   *
   * @param motion set to these readings
   */
  apartFromStop(
    readings: Float64Array,
    motion: LayoutMotion,
    found: ApartFromStop,
    from = 0,
  ): void {
    motion.fromRide();
    const travel = this.led(readings, motion, from);
    found.travel = travel;
    if (travel === null || !this.hasLimits) return;
    const atWheel = this.#leastLimit(this.#atWheel, readings, motion, travel, from);
    const elsewhere = this.#leastLimit(this.#elsewhere, readings, motion, travel, from);
    const share = this.#hasWheelLimit(atWheel) ? this.oneWheelShare(readings, from) : 1;
    found.atWheel = atWheel;
    found.hardLimit = Math.min(atWheel, elsewhere);
    found.share = share;
    found.closing = this.#closingAt(travel, found.hardLimit, atWheel, share, this.#reserveWanted);
  }

  /** As `evaluateMoved`, with what does not depend on the stop already found. */
  evaluateWith(
    readings: Float64Array,
    figures: Float64Array,
    { travel, atWheel, hardLimit, share, closing }: ApartFromStop,
    from = 0,
  ): boolean {
    const { usable: usablePlace, settle, freeHeight } = this.places;
    if (travel === null) return false;
    const gap = this.gap(readings, from);
    const usable = readings[from + usablePlace];
    const pressed = gap + usable;
    if (!travel.wheelTravelInto(figures, figure.contact, gap)) return false;
    if (!travel.wheelTravelInto(figures, figure.fullStop, pressed)) return false;
    if (settle >= 0) {
      figures[figure.contact] = figures[figure.contact] + readings[from + settle];
    }
    if (!this.hasLimits) {
      figures.fill(0, figure.hardLimit);
      return true;
    }
    if (Number.isNaN(closing)) return false;
    const fullStop = figures[figure.fullStop];
    const reserve =
      share === 1
        ? reserveOf(hardLimit, fullStop)
        : Math.min(reserveOf(hardLimit, fullStop), oneWheelReserve(atWheel, fullStop, share));
    const spacer = spacerHeightOf(pressed, closing);
    const compressed = usableShare(usable, readings[from + freeHeight]);
    figures[figure.hardLimit] = hardLimit;
    figures[figure.reserve] = reserve;
    figures[figure.spacer] = spacer;
    figures[figure.taller] = tallerHeightOf(spacer, compressed);
    return compressed < 1;
  }

  /**
   * The greatest closing, mm, at which a stop may be fully compressed and leave `reserve` mm of wheel travel
   * before the limit: s(z_h − r), of a beam axle the lesser of both wheels and one. NaN out of reach.
   *
   * @param motion set to these readings
   */
  closingBeforeLimit(
    readings: Float64Array,
    motion: LayoutMotion,
    travel: TravelMotion,
    reserve: number,
    from = 0,
  ): number {
    const atWheel = this.#leastLimit(this.#atWheel, readings, motion, travel, from);
    const elsewhere = this.#leastLimit(this.#elsewhere, readings, motion, travel, from);
    const share = this.#hasWheelLimit(atWheel) ? this.oneWheelShare(readings, from) : 1;
    return this.#closingAt(travel, Math.min(atWheel, elsewhere), atWheel, share, reserve);
  }

  /** Of a beam axle, which one wheel's travel may reach before both do. */
  #hasWheelLimit(atWheel: number): boolean {
    return this.#track >= 0 && atWheel < Number.POSITIVE_INFINITY;
  }

  #closingAt(
    travel: TravelMotion,
    hardLimit: number,
    atWheel: number,
    share: number,
    reserve: number,
  ): number {
    if (!travel.closingInto(this.#found, 0, targetTravel(hardLimit, reserve))) return Number.NaN;
    const closing = this.#found[0];
    if (share === 1) return closing;
    if (!travel.closingInto(this.#found, 0, oneWheelTarget(atWheel, reserve, share)))
      return Number.NaN;
    return Math.min(closing, this.#found[0]);
  }

  /** (T + S)/(2T): closing per wheel travel of a beam axle with one wheel up, against both. */
  oneWheelShare(readings: Float64Array, from = 0): number {
    const track = readings[from + this.#track];
    return oneWheelShareOf(track, readings[from + this.#spacing]);
  }

  #leastLimit(
    limits: readonly LimitPlaces[],
    readings: Float64Array,
    motion: LayoutMotion,
    travel: TravelMotion,
    from: number,
  ): number {
    let least = Number.POSITIVE_INFINITY;
    for (let index = 0; index < limits.length; index++) {
      const z = this.#travelTo(limits[index] as LimitPlaces, readings, motion, travel, from);
      if (z < least) least = z;
    }
    return least;
  }

  /** Was this limit's clearance measured at the wheel itself, or the travel found by hand? */
  isAtWheel(index: number): boolean {
    const limit = this.places.limits[index];
    return limit !== undefined && this.#atWheel.includes(limit);
  }

  /** Wheel travel at which one limit touches, mm; NaN where the layout cannot reach it. */
  limitTravel(
    index: number,
    readings: Float64Array,
    motion: LayoutMotion,
    travel: TravelMotion,
    from = 0,
  ): number {
    const limit = this.places.limits[index];
    return limit === undefined ? Number.NaN : this.#travelTo(limit, readings, motion, travel, from);
  }

  #travelTo(
    limit: LimitPlaces,
    readings: Float64Array,
    motion: LayoutMotion,
    travel: TravelMotion,
    from: number,
  ): number {
    const clearance = readings[from + limit.clearance];
    switch (limit.at) {
      case "wheel":
        return wheelLimitTravel(clearance, limit.perWheel);
      case "stop":
        return travel.wheelTravel(clearance);
      case "hand":
        return limit.distance < 0
          ? clearance
          : travelByHeights(readings[from + limit.distance], clearance);
      case "arm": {
        const distance = readings[from + limit.distance];
        if (!motion.armPointTravelInto(this.#found, 0, distance, clearance)) return Number.NaN;
        const modelled = this.#found[0];
        return travel === motion ? modelled : travel.wheelTravel(motion.closing(modelled));
      }
    }
  }
}

/** The reading of a place; NaN where there is none. */
function readAt(readings: Float64Array, from: number, place: number): number {
  return place < 0 ? Number.NaN : readings[from + place];
}

/** Wheel travel found by hand, mm: as read, or as the height at ride less what it then was. */
function handTravel(readings: Float64Array, from: number, atRide: number, place: number): number {
  const read = readAt(readings, from, place);
  return atRide < 0 || place < 0 ? read : travelByHeights(readAt(readings, from, atRide), read);
}
