import * as messages from "../../words/compiled/physics/verdict.ts";
import { gapOf, gapReadingOf } from "../budget/gap.ts";
import type { Check, Corner, Fitment, Reading } from "../fitment.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/**
 * Do left and right agree? Care where gap or ride height differ by more than `allowedMm` (10 mm unless
 * changed; common practice). Null with one corner.
 */
export function balanceCheck(fitment: Fitment, allowedMm: number): Check | null {
  const [one, other] = fitment.corners;
  if (one === undefined || other === undefined) return null;
  const gaps = [gapOf(fitment, one), gapOf(fitment, other)] as const;
  const gapDifference = gaps[0].ok && gaps[1].ok ? gaps[0].value - gaps[1].value : 0;
  const heightDifference =
    one.rideHeight === undefined || other.rideHeight === undefined
      ? 0
      : Math.abs(meanOf(one.rideHeight) - meanOf(other.rideHeight));
  if (Math.abs(gapDifference) > allowedMm) {
    return {
      id: "balance",
      state: "care",
      reading: standsId(gapDifference > 0 ? one : other),
      sentence: [
        messages.gapsDifferByLeft({
          gapDifference: length(Math.abs(gapDifference)),
        }),
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
        messages.rideHeightsDifferBy({
          heightDifference: length(heightDifference),
        }),
      ],
    };
  }
  return {
    id: "balance",
    state: "ok",
    sentence: [messages.leftAndRightAgree({ allowedMm: length(allowedMm) })],
  };
}

function standsId(corner: Corner): string {
  const stands = gapReadingOf(corner);
  return stands.ok ? stands.value.id : `${corner.side}.gap`;
}
