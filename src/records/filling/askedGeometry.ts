import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import {
  geometryRegistry,
  isGeometryReadingName,
  layoutReadingsInOrder,
  linkageReadings,
  strutReadings,
} from "../../physics/readings/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { chosen } from "./choice.ts";
import { withMakings } from "./makings.ts";

/** Readings that sharpen how the wheel moves with the arm or strut; asked for only where wanted. */
function isLinkageReading(name: GeometryReadingName): boolean {
  return Object.hasOwn(linkageReadings, name) || Object.hasOwn(strutReadings, name);
}

function taken(kind: LayoutKind): readonly GeometryReadingName[] {
  return layoutReadingsInOrder[kind].filter((name) => geometryRegistry[name].use[kind] !== "part");
}

/** What is asked about the arm, damper, strut or axle itself, in order. */
export function askedGeometry(stored: StoredCheck): readonly GeometryReadingName[] {
  const kind = stored.record.layout?.kind;
  if (kind === undefined) return [];
  return withMakings(
    stored,
    taken(kind).filter((name) => !isLinkageReading(name)),
  );
}

/** Does the wheel's travel want the other arm, or the arm under the strut, to be known better? */
export function hasLinkageQuestion(stored: StoredCheck): boolean {
  const { layout } = stored.record;
  if (layout?.kind === "strut") return true;
  return (
    (layout?.kind === "arm" || layout?.kind === "damper") &&
    (layout.armRole === "lower" || layout.armRole === "upper")
  );
}

/** Wanted as answered, or as the record of a file has it; null: not asked yet. */
export function wantsLinkage(stored: StoredCheck): boolean | null {
  const choice = chosen(stored, "linkage");
  if (choice !== null) return choice === "yes";
  const readings = stored.record.layout?.readings ?? {};
  return Object.keys(readings).some((name) => isGeometryReadingName(name) && isLinkageReading(name))
    ? true
    : null;
}

/** What is asked for the linkage, where it is wanted. */
export function askedLinkage(stored: StoredCheck): readonly GeometryReadingName[] {
  const kind = stored.record.layout?.kind;
  if (kind === undefined || !hasLinkageQuestion(stored) || wantsLinkage(stored) !== true) return [];
  return withMakings(stored, taken(kind).filter(isLinkageReading));
}

/** What may differ on the right; track and stop spacing belong to the whole axle. */
export function askedRightGeometry(stored: StoredCheck): readonly GeometryReadingName[] {
  return askedGeometry(stored).filter((name) => geometryRegistry[name].wholeAxle !== true);
}
