import type { Side } from "../../physics/fitment.ts";
import type { PartialCorner } from "../check/checkRecord.ts";
import { changeAside, changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { withCorner } from "../entry/entryPath.ts";
import { movedTo } from "./choice.ts";

export function sidesOf(stored: StoredCheck): readonly Side[] {
  return stored.record.corners.map((corner) => corner.side);
}

export type Sides = "both" | Side;

export function chosenSides(stored: StoredCheck): Sides | null {
  const sides = sidesOf(stored);
  return sides.length === 2 ? "both" : (sides[0] ?? null);
}

/** The check without this side; what was read there waits beside the record until it is wanted again. */
function withSideAside(stored: StoredCheck, side: Side): StoredCheck {
  const corner = stored.record.corners.find((each) => each.side === side);
  if (!corner) return stored;
  const waiting = movedTo(stored, (id) => (id.startsWith(`${side}.`) ? `aside.${id}` : id));
  const kept = changeAside({ ...stored, ...waiting }, side, corner);
  return changeRecord(kept, (record) => ({
    ...record,
    corners: record.corners.filter((each) => each.side !== side),
  }));
}

function withSideBack(stored: StoredCheck, side: Side): StoredCheck {
  if (sidesOf(stored).includes(side)) return stored;
  const corner: PartialCorner = stored.aside?.[side] ?? { side, limits: [] };
  const prefix = `aside.${side}.`;
  const wanted = movedTo(stored, (id) => (id.startsWith(prefix) ? id.slice("aside.".length) : id));
  const back = changeAside({ ...stored, ...wanted }, side, undefined);
  return changeRecord(back, (record) => withCorner(record, side, () => corner));
}

/** The check with these sides to measure, and nothing typed for the other one lost. */
export function withSides(stored: StoredCheck, sides: Sides): StoredCheck {
  const wanted: readonly Side[] = sides === "both" ? ["left", "right"] : [sides];
  return (["left", "right"] as const).reduce(
    (current, side) =>
      wanted.includes(side) ? withSideBack(current, side) : withSideAside(current, side),
    stored,
  );
}
