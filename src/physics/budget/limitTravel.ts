import * as messages from "../../words/compiled/physics/budget.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
/* Wheel travel at which a limit touches, from its own readings; mm, from the ride height. */

export const wheelLimitFormula = "z = c / p";

/** @param perWheel how much the clearance closes per wheel travel, above 0 */
export function wheelLimitTravel(clearance: number, perWheel: number): number {
  return clearance / perWheel;
}

export const handLimitFormulas = {
  heights: messages.z({
    heightAtContact: termNames.heightAtContact,
    heightAtRide: termNames.heightAtRide,
  }),
  travel: "z = c",
} as const;

/** A travel found by hand from hub to arch: the height at ride less that at the contact. */
export function travelByHeights(atRide: number, atContact: number): number {
  return atRide - atContact;
}
