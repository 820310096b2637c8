import type { LimitKind } from "./fitment.ts";
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

/** What a hard limit measures, by its kind. */
const limitNames: Readonly<Record<LimitKind, string>> = {
  tyre: "the clearance over the tyre",
  damper: "the damper travel left",
  spring: "the spring travel left",
  metal: "the clearance of metal to metal",
  other: "the clearance to the other limit",
};

/**
 * A reading's name in plain words, with its article and its side: "the gap on the left". A hard limit
 * is named by its kind where that is given. An id that is not known is returned as it stands, so that
 * a sentence is never empty.
 */
export function readingName(id: ReadingId, limitKind?: LimitKind): string {
  const side = /^(left|right)\.(.+)$/.exec(id);
  const own = side?.[2] ?? id;
  const where = side === null ? "" : ` on the ${side[1]}`;
  const limit = /^limits\.(\d+)$/.exec(own);
  if (limit !== null) {
    const name = limitKind === undefined ? undefined : limitNames[limitKind];
    return `${name ?? `the clearance of hard limit ${Number(limit[1]) + 1}`}${where}`;
  }
  return `${names[own] ?? own}${where}`;
}

/** What happens at a hard limit, as the subject and verb of a clause. */
export const limitTouches: Readonly<Record<LimitKind, string>> = {
  tyre: "the tyre touches",
  damper: "the damper reaches its end",
  spring: "the spring closes up",
  metal: "metal touches metal",
  other: "something harder touches",
};
