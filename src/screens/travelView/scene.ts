import type { View } from "../shapes/geometry.ts";
import type { DrawnCorner, DrawnMoment } from "./drawnCorner.ts";

/** What is drawn of one corner at one moment. */
export interface SceneProps {
  readonly view: View;
  readonly corner: DrawnCorner;
  readonly drawn: DrawnMoment;
}

/** Height of the other arm's pivot where it was not measured, mm. */
export function otherPivotY({ atRide }: DrawnCorner, isUpper: boolean): number {
  const rise = isUpper ? -260 : 200;
  return Math.max(isUpper ? -400 : atRide.wheel.y + 120, rise);
}
