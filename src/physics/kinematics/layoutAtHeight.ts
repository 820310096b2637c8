import * as messages from "../../words/compiled/physics/kinematics.ts";
import type { Layout } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { closingAt } from "./closingAt.ts";
import { kinematicsOf } from "./kinematics.ts";
import { layoutPlan } from "./layoutPlan.ts";
import { planFault } from "./planFault.ts";
import { turnedLayout } from "./turnedLayout.ts";

/** A layout standing at another ride height, and what that did to the stop. */
export interface LayoutAtHeight {
  readonly layout: Layout;
  /** By how much the gap opened along the stop's axis, mm; negative = closed. */
  readonly openedMm: number;
  /** … and how much that changes per mm of ride height. */
  readonly openedPerMm: number;
}

/**
 * The same suspension with its body `raisedMm` higher over the wheel (its springs longer or stiffer, its
 * joints as they were): wheel travel z = −raised. Every line turns with the part that it is on: the
 * arm's with the arm, the other arm's with that, joint height, inset and tire offset with the wheel carrier; a
 * damper's length and lean follow from its upper mount, which stays, and its lower one. Where the
 * wheel was taken in proportion to its arm the proportion stays. A strut by its lean alone and a beam axle
 * keep theirs. The ± of the raised height (mm) joins that of the arm's angles and of the damper's
 * length, to first order.
 *
 * Raised by longer subframe spacers or a body lift the arm does not turn: measure the angle then.
 * Error "heightOutOfReach", and whatever the kinematics name.
 */
export function layoutAtHeight(
  layout: Layout,
  raisedMm: number,
  toleranceMm: number,
): Outcome<LayoutAtHeight> {
  const plan = layoutPlan(layout);
  if (!plan.ok) return plan;
  const fault = planFault(plan.value);
  if (fault !== null) return { ok: false, fault };
  const kinematics = kinematicsOf(layout);
  if (!kinematics.ok) return kinematics;
  const closed = kinematics.value.closing(-raisedMm);
  if (!closed.ok) {
    return fail("heightOutOfReach", [
      messages.rideHeightIsAbove({
        raisedMm: length(Math.abs(raisedMm)),
        hasRaisedMm: raisedMm > 0,
      }),
    ]);
  }
  const { motion } = plan.value;
  const openedPerMm = closingAt(motion, -raisedMm).perMm;
  const standing = motion.standAt(-raisedMm);
  const openedMm = -closed.value;
  if (standing === null) return succeed({ layout, openedMm, openedPerMm });
  const doubt = { turn: standing.armPerMm * toleranceMm, rod: openedPerMm * toleranceMm };
  return succeed({
    layout: turnedLayout(layout, plan.value, standing, doubt),
    openedMm,
    openedPerMm,
  });
}
