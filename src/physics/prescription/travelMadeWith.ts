import type { Fitment, Layout } from "../fitment.ts";
import { kinematicsOf } from "../kinematics/kinematics.ts";
import type { MadeWith } from "./trials.ts";

/**
 * Wheel travel to contact that a vehicle was made with, mm a side: with its usual stop `gapMm` off its pad
 * on its usual suspension. Undefined where that layout cannot move so far, or is not the check's own.
 */
export function travelMadeWith(
  { layout, corners }: Pick<Fitment, "layout" | "corners">,
  usual: Layout,
  gapMm: number,
): readonly MadeWith[] | undefined {
  if (usual.kind !== layout.kind) return undefined;
  const kinematics = kinematicsOf(usual);
  if (!kinematics.ok) return undefined;
  const contact = kinematics.value.wheelTravel(gapMm);
  if (!contact.ok) return undefined;
  return corners.map(({ side }) => ({ side, wheelTravelToContactMm: contact.value }));
}
