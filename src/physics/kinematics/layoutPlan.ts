import * as messages from "../../words/compiled/physics/kinematics.ts";
import type { Layout, Linkage } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import { isFactor } from "../motion/drawnFactor.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import type { AxleMovement } from "../motion/straightMotion.ts";
import { type Fault, type Outcome, succeed } from "../outcome.ts";
import {
  type GeometryReading,
  MeasuredPlaces,
  type MeasuredSide,
  type NamedQuantity,
} from "./measuredPlaces.ts";

/** How one side's stop and wheel move together, and every reading that it is computed from. */
export interface LayoutPlan {
  readonly linkage: Linkage;
  /** One a reading, in the order in which `motion.set` takes their values. */
  readonly places: readonly GeometryReading[];
  /** Unset, for those who set readings draw by draw. */
  readonly motion: LayoutMotion;
  /** The lengths and angles of its formulas, which hold their values once the motion is set. */
  readonly quantities: readonly NamedQuantity[];
}

/**
 * The plan of one side's motion: which of its readings are used, and by which linkage the wheel's travel
 * follows from the stop's closing. The layout's own definition says which of its linkages holds.
 *
 * @param side the corner: its own readings go before the layout's, its gap belongs to a stop on the arm
 * @param movement of a beam axle: both wheels, or one with the other on the ground
 * Errors: a missing or impossible reading, by its name; `wheelPerOuterNotPositive`.
 */
export function layoutPlan(
  layout: Layout,
  side: MeasuredSide = {},
  movement: AxleMovement = "both",
): Outcome<LayoutPlan> {
  const ratioFault = wheelPerOuterFault(layout);
  if (ratioFault !== null) return { ok: false, fault: ratioFault };
  const places = new MeasuredPlaces(layout, side);
  const { linkage, motion } = layoutRegistry[layout.kind].motion(layout, places, movement);
  if (places.fault !== null) return { ok: false, fault: places.fault };
  return succeed({ linkage, places: places.places, motion, quantities: places.quantities });
}

function wheelPerOuterFault({ wheelPerOuter = 1, wheelPerOuterTol = 0 }: Layout): Fault | null {
  if (isFactor(wheelPerOuter) && wheelPerOuterTol >= 0 && wheelPerOuterTol <= 1e3) return null;
  return {
    code: "wheelPerOuterNotPositive",
    sentence: [messages.wheelsTravelPerTravel],
    reading: "wheelPerOuter",
  };
}
