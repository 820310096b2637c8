import * as messages from "../../../words/compiled/physics/motion/contact.ts";
import type { MotionFault } from "../layoutMotion.ts";
import type { Turn } from "../turn.ts";

/** w, the line to the contact against the stop's axis, of a contact that is no triangle. */
export const lineFormula = "w = φ0 + β";

/** ds/dα at ride of such a contact. */
export const lineSlopeFormula = messages.dsDCosW;

/**
 * How a stop closes as its arm turns. s, mm, is zero at ride and positive as the gap closes; a turn is
 * positive with the outer end up, rad. One contact is set to one set of readings after the other.
 */
export abstract class StopContact {
  /** s of the turn that `follow` or `close` took last, mm. */
  closing = 0;
  /** ds/dα, mm/rad, above 0 on the branch through the ride height; after `follow` alone. */
  slope = 0;
  /** d²s/dα², mm/rad²; after `follow` alone. */
  curve = 0;

  /** Takes its quantities as they are set now. */
  abstract set(): MotionFault | null;
  /** Takes another distance off the pad at ride, mm, where the stop is on the arm; else nothing changes. */
  standOffBy(_standOff: number): void {}
  /** Fills the turn at which the stop has closed by s; false where it cannot, and then no number. */
  abstract turnFor(s: number, turn: Turn): boolean;
  /** s alone at a turn; false where the turn lies off the branch through the ride height. */
  abstract close(turn: Turn): boolean;
  /** s with both derivatives at a turn; false as above. */
  abstract follow(turn: Turn): boolean;
}
