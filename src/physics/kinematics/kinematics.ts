import * as messages from "../../words/compiled/physics/kinematics.ts";
import type { Interval, Layout, Linkage } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import type { AxleMovement } from "../motion/straightMotion.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length, type Sentence } from "../sentence.ts";
import { closingAt } from "./closingAt.ts";
import { ClosingTable } from "./closingTable.ts";
import { layoutPlan } from "./layoutPlan.ts";
import type { MeasuredSide } from "./measuredPlaces.ts";
import { planFault } from "./planFault.ts";

/**
 * How a stop closes as its wheel rises. z: wheel travel, s: stop closing, both mm, zero at the measured
 * ride height, positive in jounce and as the gap closes. On `range` s rises strictly with z.
 */
export interface Kinematics {
  /** Wheel travel that the layout can reach, mm [least, greatest]; finite numbers always. */
  readonly range: Interval;
  /** s(z), mm. Error: `unreachable`. */
  closing(z: number): Outcome<number>;
  /** z(s), mm. Error: `unreachable`. */
  wheelTravel(s: number): Outcome<number>;
  /** Lever ratio R = dz/ds, wheel per stop; above 0. Its inverse is stop per wheel. Error: `unreachable`. */
  ratio(z: number): Outcome<number>;
  /** For inner loops, z clamped to the range: fills [s, ds/dz, d²s/dz²] in mm, 1, 1/mm. No allocation. */
  evaluate(z: number, out: Float64Array): void;
}

/** Kinematics of a measured layout, with what only the measuring of one gives. */
interface LayoutKinematics extends Kinematics {
  readonly linkage: Linkage;
  /**
   * Wheel travel at which a point on the arm's own line has risen by a clearance, mm: `distance` from the pivot
   * line, both mm. Errors: `unreachable`; `noArm` for strut and beam axle.
   */
  armPointTravel(distance: number, clearance: number): Outcome<number>;
}

/** R at a wheel travel. */
export const ratioFormula = { text: messages.r1DsDz, by: messages.n1DsDz };

/**
 * The kinematics of a layout at its mean readings.
 *
 * @param side the corner: its own readings go before the layout's, its gap belongs to a stop on the arm
 * @param movement of a beam axle: both wheels, or one
 * Errors: those of `layoutPlan`, and what of `planFault` gives no motion.
 */
export function kinematicsOf(
  layout: Layout,
  side: MeasuredSide = {},
  movement: AxleMovement = "both",
): Outcome<LayoutKinematics> {
  const plan = layoutPlan(layout, side, movement);
  if (!plan.ok) return plan;
  const fault = planFault(plan.value);
  if (fault !== null) return { ok: false, fault };
  const { motion, linkage } = plan.value;
  const hasArm = layoutRegistry[layout.kind].onArm;
  const kinematics = kinematicsFrom(motion);
  const { range } = kinematics;
  return succeed({
    ...kinematics,
    linkage,
    armPointTravel: (distance, clearance) => {
      if (!hasArm) {
        return fail("noArm", [messages.thisSuspensionHasNo]);
      }
      const travel = motion.armPointTravel(distance, clearance);
      return isWithin(range, travel)
        ? succeed(travel)
        : fail("unreachable", [messages.thatPointOfArm({ clearance: length(clearance) })]);
    },
  });
}

/** A hair outside the range is the range's own end. */
function isWithin([least, greatest]: Interval, z: number): boolean {
  return z >= least - 1e-6 && z <= greatest + 1e-6;
}

/** What a motion gives at its readings, each figure to the last digit whatever was asked before. */
type AskedMotion = Pick<
  LayoutMotion,
  "range" | "closing" | "wheelTravel" | "evaluate" | "fromRide"
>;

/** The kinematics of a motion that is set to its readings, and stays so. */
export function kinematicsFrom(motion: AskedMotion): Kinematics {
  const range = motion.range();
  const [least, greatest] = range;
  let table: ClosingTable | null = null;
  const wheelSentence = (z: number): Sentence =>
    Number.isFinite(z)
      ? [messages.suspensionCannotReachWheel({ z: length(z) })]
      : [messages.wheelTravelIsNot];
  const closing = (z: number): number => {
    motion.fromRide();
    return isWithin(range, z) ? motion.closing(z) : Number.NaN;
  };
  return {
    range,
    closing: (z) => {
      const s = closing(z);
      return Number.isNaN(s) ? fail("unreachable", wheelSentence(z)) : succeed(s);
    },
    wheelTravel: (s) => {
      motion.fromRide();
      const z = motion.wheelTravel(s);
      if (isWithin(range, z)) return succeed(z);
      return fail(
        "unreachable",
        Number.isFinite(s)
          ? [messages.suspensionCannotCloseStop({ s: length(s) })]
          : [messages.closingOfStopIs],
      );
    },
    ratio: (z) => {
      if (Number.isNaN(closing(z))) return fail("unreachable", wheelSentence(z));
      motion.fromRide();
      return succeed(1 / closingAt(motion, z).perMm);
    },
    evaluate: (z, out) => {
      table ??= new ClosingTable(motion, range);
      table.evaluate(Math.min(Math.max(z, least), greatest), out);
    },
  };
}
