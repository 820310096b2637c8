import type { Side } from "../../../physics/fitment.ts";
import type { ChoiceValue } from "../../../records/check/choices.ts";
import { changeRecord, type StoredCheck } from "../../../records/check/storedCheck.ts";
import { withCorner, withField } from "../../../records/entry/entryPath.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { sidesOf } from "../../../records/filling/sides.ts";

export type MassWay = ChoiceValue<`${Side}.cornerMassKg.way`>;

export function massWay(stored: StoredCheck, side: Side): MassWay | null {
  const way = chosen(stored, `${side}.cornerMassKg.way`);
  if (way !== null) return way;
  return stored.record.corners.find((corner) => corner.side === side)?.cornerMassKg
    ? "scale"
    : null;
}

function withOneWay(stored: StoredCheck, side: Side, way: MassWay): StoredCheck {
  const id = `${side}.cornerMassKg` as const;
  const aside = `aside.${id}`;
  const before = massWay(stored, side);
  const entry = stored.entries[id];
  let changed = withChoice(stored, `${id}.way`, way);
  if (before === way) return changed;
  if (before === "scale" && entry) {
    changed = { ...changed, entries: { ...changed.entries, [aside]: entry } };
  }
  const { [id]: _, ...others } = changed.entries;
  changed = changeRecord({ ...changed, entries: others }, (record) =>
    withCorner(record, side, (corner) => withField(corner, "cornerMassKg", undefined)),
  );
  const scaled = changed.entries[aside];
  return way === "scale" && scaled ? setEntry(changed, id, scaled) : changed;
}

/** The check with this way to the weight. What is not of one wheel alone stands for both, where the other has none yet. */
export function withMassWay(stored: StoredCheck, side: Side, way: MassWay): StoredCheck {
  const changed = withOneWay(stored, side, way);
  if (way !== "axle" && way !== "pack") return changed;
  return sidesOf(changed).reduce(
    (current, other) =>
      massWay(current, other) === null ? withOneWay(current, other, way) : current,
    changed,
  );
}
