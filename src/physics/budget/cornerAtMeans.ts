import * as messages from "../../words/compiled/physics/budget.ts";
import type { Corner, Fitment, Linkage } from "../fitment.ts";
import { type Kinematics, kinematicsFrom } from "../kinematics/kinematics.ts";
import type { LayoutPlan } from "../kinematics/layoutPlan.ts";
import type { NamedQuantity } from "../kinematics/measuredPlaces.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { cornerLayout } from "./cornerLayout.ts";
import { CornerModel } from "./cornerModel.ts";
import { type CornerPlaces, cornerPlaces, placeMeans } from "./cornerPlaces.ts";
import {
  type FirstHardLimit,
  type HardLimitPlace,
  hardLimitPlaces,
  travelToHardLimit,
} from "./hardLimit.ts";

/** A corner at its mean readings: how its wheel moves, where its stop stands, what touches first. */
export interface CornerAtMeans {
  readonly corner: Corner;
  readonly linkage: Linkage;
  readonly places: CornerPlaces;
  /** By place. */
  readonly means: Float64Array;
  /** Led through the contacts found by hand, where there are some. */
  readonly kinematics: Kinematics;
  /** g of the stop asked about, mm; below 0 = pressed in. */
  readonly gapMm: number;
  /** Null where no hard limit was measured. */
  readonly limit: FirstHardLimit | null;
  /** The layout's own motion, set to the means, and the lengths and angles that it is made of. */
  readonly motion: LayoutMotion;
  readonly quantities: readonly NamedQuantity[];
  /** Every hard limit that is within reach. */
  limitPlaces(): readonly HardLimitPlace[];
}

/** What of a corner at its means is the same whichever stop is asked about, at whatever height. */
type MovedCorner = Pick<
  CornerAtMeans,
  "linkage" | "kinematics" | "limit" | "motion" | "quantities" | "limitPlaces"
>;

/** What that is worked out from besides the corner. */
interface MovedFrom {
  readonly layout: Fitment["layout"];
  readonly fullTravel: Fitment["fullTravel"];
  readonly measuredStop: Fitment["stop"];
}

/** A corner as it was moved last: many stops are asked about on one vehicle, whose readings never change. */
interface LastMoved {
  readonly from: MovedFrom;
  readonly plan: Outcome<LayoutPlan>;
  moved: Outcome<MovedCorner> | null;
  drawn: Outcome<LayoutPlan> | null;
}

const lastMoved = new WeakMap<Corner, LastMoved>();

function lastMovedOf({ layout, fullTravel, stop, recordedStop = stop }: Fitment, corner: Corner) {
  const known = lastMoved.get(corner);
  const isSame =
    known?.from.layout === layout &&
    known.from.fullTravel === fullTravel &&
    known.from.measuredStop === recordedStop;
  if (isSame) return known;
  const from = { layout, fullTravel, measuredStop: recordedStop };
  const made: LastMoved = {
    from,
    plan: cornerLayout({ layout }, corner),
    moved: null,
    drawn: null,
  };
  lastMoved.set(corner, made);
  return made;
}

/**
 * A motion of the corner's layout for whoever sets readings draw by draw, to be set before each use: the
 * same whichever stop is asked about. Errors: those of `cornerLayout`.
 */
export function motionToDraw(fitment: Fitment, corner: Corner): Outcome<LayoutMotion> {
  const last = lastMovedOf(fitment, corner);
  last.drawn ??= cornerLayout(fitment, corner);
  return last.drawn.ok ? succeed(last.drawn.value.motion) : last.drawn;
}

/**
 * A corner at its mean readings.
 *
 * Errors: those of `cornerLayout`, `cornerPlaces` and `travelToHardLimit`; `contactsByHandApart` where no
 * motion leads through the contacts found by hand.
 */
export function cornerAtMeans(fitment: Fitment, corner: Corner): Outcome<CornerAtMeans> {
  const last = lastMovedOf(fitment, corner);
  if (!last.plan.ok) return last.plan;
  const { motion, places: geometry } = last.plan.value;
  const places = cornerPlaces(fitment, corner, geometry);
  if (!places.ok) return places;
  const means = placeMeans(places.value.all);
  const model = new CornerModel(fitment, corner, motion, places.value, 0);
  last.moved ??= movedCorner(fitment, corner, last.plan.value, model, means);
  if (!last.moved.ok) return last.moved;
  return succeed({
    ...last.moved.value,
    corner,
    places: places.value,
    means,
    gapMm: model.gap(means),
  });
}

function movedCorner(
  fitment: Fitment,
  { side }: Corner,
  { linkage, motion, quantities }: LayoutPlan,
  model: CornerModel,
  means: Float64Array,
): Outcome<MovedCorner> {
  motion.set(means);
  const travel = model.led(means, motion);
  if (travel === null) {
    return fail(
      "contactsByHandApart",
      [messages.onWheelTravelsFound({ side })],
      `fullTravel.${side}.block.${wayOf(fitment)}`,
    );
  }
  const limit = travelToHardLimit(model, means, motion, travel);
  if (!limit.ok) return limit;
  return succeed({
    linkage,
    kinematics: kinematicsFrom(travel),
    limit: limit.value,
    motion,
    quantities,
    limitPlaces: () => {
      motion.fromRide();
      return hardLimitPlaces(model, means, motion, travel);
    },
  });
}

function wayOf({ fullTravel }: Fitment): string {
  return fullTravel?.measure === "hubToArch" ? "heightToArch" : "wheelTravel";
}
