import type { Side } from "../../physics/fitment.ts";
import type { PartialLimit } from "../check/checkRecord.ts";
import type { ChoiceValue } from "../check/choices.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { withCorner } from "../entry/entryPath.ts";
import { withoutReading } from "./aside.ts";
import { setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";
import { hasArm } from "./layoutChoices.ts";

/**
 * Where a clearance was measured. Of what the arm carries, a place on it: near the stop, at the damper's
 * mount, at the outer joint, or a distance of its own.
 */
export type LimitPlaceChoice = ChoiceValue<ReturnType<typeof choiceId>>;

const onArm: readonly LimitPlaceChoice[] = ["nearStop", "mount", "joint", "distance"];

const limitOf = (stored: StoredCheck, side: Side, index: number): PartialLimit | undefined =>
  stored.record.corners.find((corner) => corner.side === side)?.limits[index];

const choiceId = (side: Side, index: number) => `${side}.limits.${index}.place` as const;

/** What the arm can carry: on an arm or a damper everything but the tire may sit on it. */
export function asksPlaceOnArm(stored: StoredCheck, limit: PartialLimit): boolean {
  return hasArm(stored) && limit.kind !== "tyre";
}

/** As chosen, or as the record of a file has it; null: not said yet. */
export function limitPlaceOf(
  stored: StoredCheck,
  side: Side,
  index: number,
): LimitPlaceChoice | null {
  const limit = limitOf(stored, side, index);
  if (limit === undefined) return null;
  if (limit.at === "stop") return "stop";
  const choice = chosen(stored, choiceId(side, index));
  if (limit.at === "arm") return choice !== null && onArm.includes(choice) ? choice : "distance";
  return asksPlaceOnArm(stored, limit) && choice !== "wheel" && limit.perWheel === undefined
    ? null
    : "wheel";
}

/** Is it said where the clearance sits, and on the arm how far out? One to one is never taken silently. */
export function isLimitPlaced(stored: StoredCheck, side: Side, index: number): boolean {
  const limit = limitOf(stored, side, index);
  if (limit === undefined || limitPlaceOf(stored, side, index) === null) return false;
  return limit.at !== "arm" || limit.distance !== undefined;
}

/** The entry of the length that a place on the arm has anyway, where it was measured. */
function knownDistance(stored: StoredCheck, place: LimitPlaceChoice): Entry | undefined {
  if (place === "nearStop") return stored.entries.pivotToStop;
  if (place === "mount") return stored.entries.pivotToMount;
  return place === "joint" ? stored.entries.pivotToOuter : undefined;
}

/** The check with the clearance at this place; the distance follows where a measured length gives it. */
export function chooseLimitPlace(
  stored: StoredCheck,
  side: Side,
  index: number,
  place: LimitPlaceChoice,
): StoredCheck {
  const at = place === "wheel" || place === "stop" ? place : "arm";
  const distanceId = `${side}.limits.${index}.distance`;
  const before = limitPlaceOf(stored, side, index);
  const said = changeRecord(withChoice(stored, choiceId(side, index), place), (record) =>
    withCorner(record, side, (corner) => ({
      ...corner,
      limits: corner.limits.map((limit, each) => (each === index ? { ...limit, at } : limit)),
    })),
  );
  if (at !== "arm") return withoutReading(said, distanceId);
  const known = knownDistance(said, place);
  if (known !== undefined) return setEntry(said, distanceId, known);
  return before === place ? said : withoutReading(said, distanceId);
}
