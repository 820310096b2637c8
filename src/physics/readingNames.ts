import type { LimitKind } from "./fitment.ts";
import type { ReadingId } from "./outcome.ts";
import { geometryRegistry, isGeometryReadingName } from "./readings/geometryRegistry.ts";

/**
 * Plain names in the middle of a sentence, by the last part of their id, of what is no reading of the
 * geometry; those have theirs in the registry.
 */
const names: Readonly<Record<string, string>> = {
  gap: "gap",
  rideHeight: "ride height",
  cornerMassKg: "corner weight",
  freeHeight: "free height of the stop",
  curve: "force curve of the stop",
  unsprungMassKg: "unsprung mass",
  wheelRateNPerMm: "wheel rate",
  tyreRateNPerMm: "tyre rate",
  damperBumpNsPerMm: "damping in bump",
  damperReboundNsPerMm: "damping in rebound",
  payloadPerCornerKg: "payload",
  wheelPerOuter: "wheel travel per travel of the outer joint",
  linkage: "linkage",
};

/** What a hard limit's reading measures, by its kind. */
const limitNames: Readonly<Record<LimitKind, string>> = {
  tyre: "clearance over the tyre",
  damper: "damper travel left",
  spring: "spring travel left",
  metal: "metal to metal clearance",
  other: "other clearance",
};

/** What happens at a hard limit, as the subject and verb of a clause. */
export const limitTouches: Readonly<Record<LimitKind, string>> = {
  tyre: "the tyre touches",
  damper: "the damper reaches its end",
  spring: "the spring closes up",
  metal: "metal touches metal",
  other: "something harder touches",
};

/**
 * A reading's name in plain words with its article and, where it has one, its side: "the left gap",
 * "the arm angle". A hard limit is named by its kind where that is given. An id that is not known is
 * named by its last part, so that a sentence is never empty.
 */
export function readingName(id: ReadingId, limitKind?: LimitKind): string {
  const parts = id.split(".");
  const last = parts.at(-1) as string;
  const [first] = parts;
  const side = first === "left" || first === "right" ? `${first} ` : "";
  if (parts.at(-2) === "limits") {
    const name = limitKind === undefined ? undefined : limitNames[limitKind];
    return `the ${side}${name ?? "clearance to the hard limit"}`;
  }
  if (isGeometryReadingName(last)) return `the ${side}${geometryRegistry[last].name}`;
  return `the ${side}${Object.hasOwn(names, last) ? names[last] : last}`;
}
