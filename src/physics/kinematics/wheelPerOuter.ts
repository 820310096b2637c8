import type { Interval, Layout } from "../fitment.ts";
import { layoutValues } from "../readings/vehicleValues.ts";
import { layoutPlan } from "./layoutPlan.ts";
import type { MeasuredSide } from "./measuredPlaces.ts";

/** Wheel travel per travel of the outer joint as seen on vehicles; outside of it, ask again. */
export const believableWheelPerOuter: Interval = layoutValues.wheelPerOuter.believable;

/** Rise of the outer joint either way from which the ratio is taken, mm: exact to 1e-6. */
const rise = 0.1;

/**
 * κ at ride as it follows from the readings of both arms, at their means; null where it was not computed from
 * readings, or where those give no motion.
 */
export function measuredWheelPerOuter(layout: Layout, side: MeasuredSide): number | null {
  const plan = layoutPlan(layout, side);
  if (!plan.ok) return null;
  const { linkage, motion, places, quantities } = plan.value;
  if (linkage !== "fourBar" && linkage !== "instantCentre") return null;
  if (motion.set(Float64Array.from(places, ({ drawn }) => drawn.mean)) !== null) return null;
  const outer = quantities.find(({ name }) => name === "pivotToOuter")?.quantity;
  if (outer === undefined || !("value" in outer)) return null;
  const ratio =
    (motion.armPointTravel(outer.value, rise) - motion.armPointTravel(outer.value, -rise)) /
    (2 * rise);
  return Number.isFinite(ratio) ? ratio : null;
}
