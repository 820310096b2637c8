import type { LimitKind, Side } from "../../physics/fitment.ts";
import { limitKinds } from "../../physics/readings/index.ts";
import type { PartialLimit } from "../check/checkRecord.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { addLimit, removeLimit, setEntry } from "./changes.ts";
import { withChoice } from "./choice.ts";
import { chooseLimitPlace, limitPlaceOf } from "./limitPlace.ts";

function limitsOf(stored: StoredCheck, side: Side): readonly PartialLimit[] {
  return stored.record.corners.find((corner) => corner.side === side)?.limits ?? [];
}

const asideId = (side: Side, kind: LimitKind, field: string) =>
  `aside.${side}.limit.${kind}.${field}`;

function moveEntry(
  entries: { readonly [id: string]: Entry },
  from: string,
  to: string,
): Record<string, Entry> {
  const { [from]: entry, ...others } = entries;
  return entry ? { ...others, [to]: entry } : { ...others };
}

/** The check with this kind of limit to measure; what was typed for it before is there again. */
export function withLimit(stored: StoredCheck, side: Side, kind: LimitKind): StoredCheck {
  const index = limitsOf(stored, side).length;
  const id = `${side}.limits.${index}`;
  const left = limitsOf(stored, "left").find((limit) => limit.kind === kind);
  const at = side === "right" && left ? left.at : "wheel";
  let changed = addLimit(withChoice(stored, `${side}.limits`, null), side, { kind, at });
  const reading = changed.entries[asideId(side, kind, "reading")];
  const perWheel =
    changed.entries[asideId(side, kind, "perWheel")] ??
    (side === "right" ? leftPerWheel(stored, kind) : undefined);
  let entries = moveEntry(changed.entries, asideId(side, kind, "reading"), id);
  entries = moveEntry(entries, asideId(side, kind, "perWheel"), `${id}.perWheel`);
  changed = { ...changed, entries };
  if (side === "right" && left !== undefined) changed = withPlaceOfLeft(changed, kind, index);
  if (reading) changed = setEntry(changed, id, reading);
  if (perWheel) changed = setEntry(changed, `${id}.perWheel`, perWheel);
  return changed;
}

/** How fast the same clearance closes on the left: the parts are the same more often than not. */
function leftPerWheel(stored: StoredCheck, kind: LimitKind): Entry | undefined {
  const index = limitsOf(stored, "left").findIndex((limit) => limit.kind === kind);
  return stored.entries[`left.limits.${index}.perWheel`];
}

/** Where the same clearance sits on the left: the arms are the same more often than not. */
function withPlaceOfLeft(stored: StoredCheck, kind: LimitKind, index: number): StoredCheck {
  const onLeft = limitsOf(stored, "left").findIndex((limit) => limit.kind === kind);
  const place = limitPlaceOf(stored, "left", onLeft);
  if (place === null) return stored;
  const placed = chooseLimitPlace(stored, "right", index, place);
  const distance = stored.entries[`left.limits.${onLeft}.distance`];
  return distance === undefined || place !== "distance"
    ? placed
    : setEntry(placed, `right.limits.${index}.distance`, distance);
}

/** The check without this kind of limit; its reading waits in case it is wanted again. */
export function withoutLimit(stored: StoredCheck, side: Side, kind: LimitKind): StoredCheck {
  let changed = stored;
  for (;;) {
    const index = limitsOf(changed, side).findLastIndex((limit) => limit.kind === kind);
    if (index < 0) return changed;
    const id = `${side}.limits.${index}`;
    let entries = moveEntry(changed.entries, id, asideId(side, kind, "reading"));
    entries = moveEntry(entries, `${id}.perWheel`, asideId(side, kind, "perWheel"));
    changed = removeLimit({ ...changed, entries }, side, index);
  }
}

/** None of them can be reached or is known: said, so that it need not be asked again. */
export function withNoLimits(stored: StoredCheck, side: Side): StoredCheck {
  const emptied = limitKinds.reduce((current, kind) => withoutLimit(current, side, kind), stored);
  return withChoice(emptied, `${side}.limits`, "none");
}

/** The right side with the limits that were looked at on the left, where nothing is chosen yet. */
export function withLimitsOfLeft(stored: StoredCheck): StoredCheck {
  return limitsOf(stored, "left").reduce(
    (current, limit) =>
      limitsOf(current, "right").some((own) => own.kind === limit.kind)
        ? current
        : withLimit(current, "right", limit.kind),
    stored,
  );
}
