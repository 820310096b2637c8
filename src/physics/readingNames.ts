import type { ReadingId } from "./outcome.ts";

/** Plain names of the readings that stand alone: shared geometry, the stop's, the ride data's. */
const names: Readonly<Record<string, string>> = {
  pivotToStop: "the distance from pivot to stop",
  pivotToOuter: "the distance from pivot to outer joint",
  pivotToMount: "the distance from pivot to damper mount",
  armAngle: "the arm angle",
  stopLineAngle: "the angle of the line from pivot to stop",
  mountLineAngle: "the angle of the line from pivot to damper mount",
  stopLean: "the lean of the stop",
  damperLength: "the damper length",
  track: "the track",
  stopSpacing: "the spacing of the stops",
  gap: "the gap",
  rideHeight: "the ride height",
  cornerMassKg: "the corner weight",
  "stop.freeHeight": "the free height of the stop",
  "ride.unsprungMassKg": "the unsprung mass",
  "ride.wheelRateNPerMm": "the wheel rate",
  "ride.tyreRateNPerMm": "the tyre rate",
  "ride.damperBumpNsPerMm": "the damping in bump",
  "ride.damperReboundNsPerMm": "the damping in rebound",
  "ride.payloadPerCornerKg": "the payload",
};

/** The names of several hard limits of one kind are told apart by their place in the list. */
const limitPattern = /^limits\.(\d+)$/;

/**
 * A reading's name in plain words, with its article and its side: "the gap on the left". An id that
 * is not known is returned as it stands, so that a sentence is never empty.
 */
export function readingName(id: ReadingId): string {
  const side = /^(left|right)\.(.+)$/.exec(id);
  const own = side?.[2] ?? id;
  const where = side === null ? "" : ` on the ${side[1]}`;
  const limit = limitPattern.exec(own);
  if (limit !== null) return `clearance ${Number(limit[1]) + 1}${where}`;
  return `${names[own] ?? own}${where}`;
}
