import type { Side } from "../fitment.ts";
import { isReadingId, type QuantityId, type ReadingId } from "../readings/readingId.ts";
import type { DrawnReading } from "../uncertainty/drawnReading.ts";
import type { AfterReading } from "./readAgain.ts";

/**
 * What narrows a doubt that no reading taken again does: measuring the other arm, finding the travel by
 * hand with a block in the stop's place, or hearing from the stop's maker.
 */
export type OtherWay = "otherArm" | "byHand" | "byHandToFullStop" | "maker";

export interface OtherRemedy {
  readonly way: OtherWay;
  readonly after: AfterReading;
}

/** ± of κ once the other arm is measured with the usual tools, of 80 mm of offset. Common practice. */
const ratioByOtherArm = 0.01;
/** ± of a wheel travel found by hand, mm. Common practice. */
const byHandMm = 2;

/** What to do about a cause of doubt that is no reading; null for a reading, and where nothing helps. */
export function otherRemedy(
  cause: DrawnReading,
  travelMm: number,
  hasOtherArm: boolean,
): OtherRemedy | null {
  const { id, halfWidth, standardError } = cause;
  const left = (way: OtherWay, remaining: number): OtherRemedy => ({
    way,
    after: {
      halfWidth: remaining,
      standardError: 0,
      shift: { halfWidths: [halfWidth, remaining], standardDeviation: standardError },
    },
  });
  if (id === "wheelPerOuter") {
    return hasOtherArm && halfWidth > ratioByOtherArm ? left("otherArm", ratioByOtherArm) : null;
  }
  if (id === "linkage") {
    return travelMm > byHandMm ? left("byHand", byHandMm / travelMm) : null;
  }
  if (isBeyondContact(id)) return left("byHandToFullStop", 0);
  return id === "stop.usableCompressionMm" && halfWidth > 0 ? left("maker", halfWidth / 2) : null;
}

/** A cause of doubt that can be read off the vehicle, or found out anew. */
export function isRead(id: QuantityId): id is Exclude<ReadingId, "stop.usableCompressionMm"> {
  return isReadingId(id) && id !== "stop.usableCompressionMm";
}

/** What increments beyond the last contact found by hand may be off, on either side. */
function isBeyondContact(id: QuantityId): id is `${Side}.linkage` {
  return id === "left.linkage" || id === "right.linkage";
}
