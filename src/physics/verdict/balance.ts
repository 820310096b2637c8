import type { Check, Corner, Reading } from "../fitment.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/**
 * Do left and right agree? Care where gap or ride height differ by more than `allowedMm` (10 mm unless
 * changed; common practice). Null with one corner.
 */
export function balanceCheck(corners: readonly Corner[], allowedMm: number): Check | null {
  const [one, other] = corners;
  if (one === undefined || other === undefined) return null;
  const gapDifference = Math.abs(meanOf(one.gap) - meanOf(other.gap));
  const heightDifference =
    one.rideHeight === undefined || other.rideHeight === undefined
      ? 0
      : Math.abs(meanOf(one.rideHeight) - meanOf(other.rideHeight));
  if (gapDifference > allowedMm) {
    return {
      id: "balance",
      state: "care",
      reading: `${meanOf(one.gap) > meanOf(other.gap) ? one.side : other.side}.gap`,
      sentence: [
        "The gaps differ by ",
        length(gapDifference),
        " left to right. Look for a sagged spring or a bent part, and check that the vehicle stands level.",
      ],
    };
  }
  if (heightDifference > allowedMm) {
    const low = (corner: Corner) => meanOf(corner.rideHeight as Reading);
    return {
      id: "balance",
      state: "care",
      reading: `${low(one) < low(other) ? one.side : other.side}.rideHeight`,
      sentence: [
        "The ride heights differ by ",
        length(heightDifference),
        " left to right. Look for a sagged spring, and check tyre pressures and that the vehicle stands level.",
      ],
    };
  }
  return {
    id: "balance",
    state: "ok",
    sentence: ["Left and right agree within ", length(allowedMm), "."],
  };
}
