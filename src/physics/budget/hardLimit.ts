import * as messages from "../../words/compiled/physics/budget.ts";
import type { LimitKind } from "../fitment.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { capital, length } from "../sentence.ts";
import type { CornerModel } from "./cornerModel.ts";
import type { CornerPlace, LimitPlaces } from "./cornerPlaces.ts";
import type { TravelMotion } from "./handMotion.ts";

export const leastLimitText = messages.zHLeastOf;

/** The hard limit that touches first. */
export interface FirstHardLimit {
  /** z_h: wheel travel from the measured ride height, mm, above 0. */
  readonly travelMm: number;
  readonly kind: LimitKind;
  /** Its reading: "left.limits.0", or "fullTravel.left.tyre.wheelTravel" where it was found by hand. */
  readonly id: QuantityId;
  /** Its place in the corner's list; null: found by hand. */
  readonly index: number | null;
}

/** One hard limit and where it sits. */
export interface HardLimitPlace extends FirstHardLimit {
  readonly at: LimitPlaces["at"];
  /** On the arm: from the pivot line, mm; null elsewhere. */
  readonly distanceMm: number | null;
}

/** The wheel travels at which each limit touches, of those within reach. */
export function hardLimitPlaces(
  model: CornerModel,
  readings: Float64Array,
  motion: LayoutMotion,
  travel: TravelMotion,
): readonly HardLimitPlace[] {
  const { limits, all } = model.places;
  const [, greatest] = travel.range();
  return limits.flatMap(({ kind, at, index, clearance, distance }, place) => {
    const travelMm = model.limitTravel(place, readings, motion, travel);
    if (!(travelMm <= greatest)) return [];
    const { id } = all[clearance] as CornerPlace;
    const distanceMm = at === "arm" ? (readings[distance] ?? null) : null;
    return [{ travelMm, kind, id, index, at, distanceMm }];
  });
}

/**
 * z_h of a corner at its mean readings: the least of all hard limits. One that the layout cannot reach
 * never touches. Null where no limit was measured.
 *
 * @param motion set to the readings
 * @param travel the same led through contacts found by hand
 * Errors: `perWheelNotPositive`; `limitOutOfReach` where the layout can reach none of them.
 */
export function travelToHardLimit(
  model: CornerModel,
  readings: Float64Array,
  motion: LayoutMotion,
  travel: TravelMotion,
): Outcome<FirstHardLimit | null> {
  const { limits, all } = model.places;
  const [one] = limits;
  if (one === undefined) return succeed(null);
  const [, greatest] = travel.range();
  const idOf = (limit: LimitPlaces): QuantityId => (all[limit.clearance] as CornerPlace).id;
  let first: FirstHardLimit | null = null;
  for (const [place, limit] of limits.entries()) {
    const { kind, perWheel, index } = limit;
    if (!(Number.isFinite(perWheel) && perWheel > 0)) {
      return fail(
        "perWheelNotPositive",
        [messages.mustCloseByMore({ readingName: capital(readingName(idOf(limit), kind)) })],
        idOf(limit),
      );
    }
    const travelMm = model.limitTravel(place, readings, motion, travel);
    if (!(travelMm <= greatest)) continue;
    if (first === null || travelMm < first.travelMm) {
      first = { travelMm, kind, id: idOf(limit), index };
    }
  }
  if (first !== null) return succeed(first);
  return fail(
    "limitOutOfReach",
    [
      messages.isMoreThanThis({
        readingName: capital(readingName(idOf(one), one.kind)),
        greatest: length(greatest),
      }),
    ],
    idOf(one),
  );
}
