import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import {
  closerReadings,
  geometryRegistry,
  layoutReadingsInOrder,
  layoutRegistry,
} from "../../physics/readings/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { chosen } from "./choice.ts";
import { withMakings } from "./makings.ts";

function taken(kind: LayoutKind): readonly GeometryReadingName[] {
  return layoutReadingsInOrder[kind].filter((name) => geometryRegistry[name].use !== "part");
}

/** What is asked about the arm, damper, strut or axle itself, in order. */
export function askedGeometry(stored: StoredCheck): readonly GeometryReadingName[] {
  const kind = stored.record.layout?.kind;
  if (kind === undefined) return [];
  return withMakings(
    stored,
    taken(kind).filter((name) => !closerReadings[kind].includes(name)),
  );
}

/** Does the wheel's travel want the other arm, or the arm under the strut, to be known better? */
export function hasLinkageQuestion(stored: StoredCheck): boolean {
  const { layout } = stored.record;
  const closer = layout?.kind === undefined ? null : layoutRegistry[layout.kind].closer;
  if (closer === null) return false;
  return !closer.ofTwoArms || layout?.armRole === "lower" || layout?.armRole === "upper";
}

/** Wanted as answered, or as the record of a file has it; null: not asked yet. */
export function wantsLinkage(stored: StoredCheck): boolean | null {
  const choice = chosen(stored, "linkage");
  if (choice !== null) return choice === "yes";
  const { kind, readings = {} } = stored.record.layout ?? {};
  const closer = kind === undefined ? [] : closerReadings[kind];
  return closer.some((name) => readings[name] !== undefined) ? true : null;
}

/** What is asked for the linkage, where it is wanted. */
export function askedLinkage(stored: StoredCheck): readonly GeometryReadingName[] {
  const kind = stored.record.layout?.kind;
  if (kind === undefined || !hasLinkageQuestion(stored) || wantsLinkage(stored) !== true) return [];
  return withMakings(stored, closerReadings[kind]);
}

/** What may differ on the right; track and stop spacing belong to the whole axle. */
export function askedRightGeometry(stored: StoredCheck): readonly GeometryReadingName[] {
  return askedGeometry(stored).filter((name) => geometryRegistry[name].wholeAxle !== true);
}
