import { mean } from "../../physics/uncertainty/index.ts";
import type { PartialCheckRecord } from "./checkRecord.ts";

/**
 * By how much a stop made for impacts is pressed with the vehicle standing, on the worse side, mm; null
 * where it is not, or where that is not known yet.
 */
export function pressedAtRest({
  corners,
  stop,
}: Pick<PartialCheckRecord, "corners" | "stop">): number | null {
  const height = stop?.freeHeight?.values;
  if (stop?.duty !== "impact" || height === undefined || height.length === 0) return null;
  const pressed = corners.flatMap(({ pressedHeight }) =>
    pressedHeight && pressedHeight.values.length > 0
      ? [mean(height) - mean(pressedHeight.values)]
      : [],
  );
  const worst = Math.max(0, ...pressed);
  return worst > 0 ? worst : null;
}
