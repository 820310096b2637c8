import type { PreparedCorner } from "../assess.ts";
import type { Fitment } from "../fitment.ts";
import { isProgressive } from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import type { WantedTravel } from "../uncertainty/cornerDraws.ts";
import { type Combination, fittedId } from "./candidates.ts";

/* By which combinations of one vehicle are known to share what was worked out once. */

/** One combination. */
export function keyOf({ candidate, spacerMm }: Combination): string {
  return `${candidate.id} ${spacerMm}`;
}

/** What reserve and early contact of a combination depend on. */
export function heightKey({ candidate, spacerMm }: Combination): string {
  const { id, stop } = candidate;
  const curve = stop.duty === "carry" ? null : stopCurve(stop);
  if (!curve?.ok) return `${id} ${spacerMm}`;
  const { freeHeight, usableCompressionMm, usableTolMm } = stop;
  return JSON.stringify([
    spacerMm,
    id === fittedId,
    freeHeight,
    usableCompressionMm,
    usableTolMm,
    isProgressive(curve.value),
  ]);
}

/** The wanted travel itself; where it is drawn, all that it is drawn from. */
export function travelKey(
  { ride, rules, use }: Fitment,
  { road }: PreparedCorner,
  state: "laden" | "unladen",
  travel: WantedTravel,
): string {
  if (typeof travel === "number") return `${travel}`;
  const { progressive, heldAtRideN, cornerMassKg } = road.corner;
  return JSON.stringify([state, ride, rules, use, progressive, heldAtRideN, cornerMassKg]);
}

/** What the suspension of a corner is drawn from: its side, and what was found by hand with which stop. */
export function geometryKey({ budget: { corner, places } }: PreparedCorner): string {
  const height = places.hand === null ? null : (places.all[places.recordedHeight]?.id ?? "stop");
  return `${corner.side} ${height}`;
}
