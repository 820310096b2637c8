import type { Corner, Fitment, Linkage } from "../fitment.ts";
import { type Kinematics, kinematicsFrom } from "../kinematics/kinematics.ts";
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

/**
 * A corner at its mean readings.
 *
 * Errors: those of `cornerLayout`, `cornerPlaces` and `travelToHardLimit`; `contactsByHandApart` where no
 * motion leads through the contacts found by hand.
 */
export function cornerAtMeans(fitment: Fitment, corner: Corner): Outcome<CornerAtMeans> {
  const layout = cornerLayout(fitment, corner);
  if (!layout.ok) return layout;
  const { linkage, motion, quantities } = layout.value;
  const places = cornerPlaces(fitment, corner, layout.value.places);
  if (!places.ok) return places;
  const means = placeMeans(places.value.all);
  const model = new CornerModel(fitment, corner, motion, places.value, 0);
  motion.set(means);
  const travel = model.led(means, motion);
  if (travel === null) {
    return fail(
      "contactsByHandApart",
      [
        `On the ${corner.side}, the wheel travels found by hand do not rise from the stop to the block. Check both, and the block's height.`,
      ],
      `fullTravel.${corner.side}.block.${wayOf(fitment)}`,
    );
  }
  const limit = travelToHardLimit(model, means, motion, travel);
  if (!limit.ok) return limit;
  return succeed({
    corner,
    linkage,
    places: places.value,
    means,
    kinematics: kinematicsFrom(travel),
    gapMm: model.gap(means),
    limit: limit.value,
    motion,
    quantities,
    limitPlaces: () => hardLimitPlaces(model, means, motion, travel),
  });
}

function wayOf({ fullTravel }: Fitment): string {
  return fullTravel?.measure === "hubToArch" ? "heightToArch" : "wheelTravel";
}
