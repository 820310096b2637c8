import type { Side } from "../../physics/fitment.ts";
import type { ChoiceValue } from "../check/choices.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { readEntry } from "../entry/entry.ts";
import { withCorner } from "../entry/entryPath.ts";
import { chosen, withChoice } from "./choice.ts";
import { sidesOf } from "./sides.ts";

export type Moved = ChoiceValue<`${Side}.moved`>;

/** Whether the vehicle was rolled, driven or bounced between the gap and the clearances of a side; null: not said. */
export function movedBetween(stored: StoredCheck, side: Side): Moved | null {
  return chosen(stored, `${side}.moved`);
}

export function chooseMoved(stored: StoredCheck, side: Side, moved: Moved): StoredCheck {
  return withChoice(stored, `${side}.moved`, moved);
}

/**
 * The check with the friction of a side in the ± of its clearances where the vehicle was moved since its gap
 * was read. Friction holds the body within ± settleMm of wheel travel; in one stand it cancels between gap and
 * clearance, in two it does not. The record has a clearance's ± for it and no field of its own: ±√(tol² + f²),
 * f = settleMm · closing per wheel travel. At the stop and on the arm, where the clearance closes less than the
 * wheel rises, f = settleMm is more than it can be.
 */
export function withFrictionBetween(stored: StoredCheck): StoredCheck {
  return sidesOf(stored).reduce(withFrictionOfSide, stored);
}

function withFrictionOfSide(stored: StoredCheck, side: Side): StoredCheck {
  const moved = movedBetween(stored, side);
  const corner = stored.record.corners.find((each) => each.side === side);
  if (moved === null || !corner) return stored;
  const friction = moved === "yes" ? (corner.settleMm ?? 0) : 0;
  let changed = false;
  const limits = corner.limits.map((limit, index) => {
    const id = `${side}.limits.${index}` as const;
    const entry = stored.entries[id];
    const typed = entry && readEntry(id, entry);
    if (!typed?.ok || !limit.reading) return limit;
    const closing = limit.at === "wheel" ? (limit.perWheel ?? 1) : 1;
    const tol = Math.hypot(typed.value.tol, friction * closing);
    if (tol === limit.reading.tol) return limit;
    changed = true;
    return { ...limit, reading: { ...limit.reading, tol } };
  });
  if (!changed) return stored;
  return changeRecord(stored, (record) =>
    withCorner(record, side, (current) => ({ ...current, limits })),
  );
}
