import type { ChoiceValue } from "../check/choices.ts";
import { changeAside, changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { withField } from "../entry/entryPath.ts";
import type { LengthUnit } from "../entry/units.ts";
import { type Pack, type PackStop, stopFromPack, takenFrom } from "../pack/pack.ts";
import { chooseStop, setEntry } from "./changes.ts";
import { chosen, movedTo, withChoice } from "./choice.ts";
import { withTestedAtSpeed } from "./testedAtSpeed.ts";

export type StopSource = ChoiceValue<"stop.source"> | "file";

export function stopSource(stored: StoredCheck): StopSource | null {
  return chosen(stored, "stop.source") ?? (stored.record.stop?.curve ? "file" : null);
}

const asidePrefix = "aside.stop.hand.";
const isOfStop = (id: string): boolean => id.startsWith("stop.") && id !== "stop.source";

/** What was typed by hand waits beside the record while a stop of the pack is chosen. */
function withHandAside(stored: StoredCheck): StoredCheck {
  const source = stopSource(stored);
  if (source !== "hand" && source !== "file") return stored;
  const waiting = movedTo(stored, (id) => (isOfStop(id) ? `${asidePrefix}${id}` : id));
  const {
    freeHeight: _height,
    curve: _curve,
    damping: _damping,
    ...plain
  } = stored.record.stop ?? {};
  const { usableCompressionMm: _usable, usableTolMm: _tol, restLoss: _loss, ...rest } = plain;
  const { staticShare: _share, estimated: _estimated, ...fields } = rest;
  return changeAside({ ...stored, ...waiting }, "handStop", fields);
}

function withHandBack(stored: StoredCheck): StoredCheck {
  const { testedAtSpeed, ...named } = stored.aside?.handStop ?? {};
  const isWaiting = (id: string): boolean => id.startsWith(asidePrefix);
  const back = movedTo(stored, (id) => (isWaiting(id) ? id.slice(asidePrefix.length) : null));
  const others = movedTo(stored, (id) => (isWaiting(id) || isOfStop(id) ? null : id));
  const choices = { ...others.choices, ...back.choices };
  const emptied = changeRecord({ ...stored, ...others, choices }, (record) => ({
    ...record,
    stop: named,
  }));
  const filled = Object.entries(back.entries).reduce(
    (current, [id, entry]) => setEntry(current, id, entry),
    emptied,
  );
  return testedAtSpeed === undefined ? filled : withTestedAtSpeed(filled, testedAtSpeed);
}

/** The check with its stop from the pack or by hand; the stop of a file is what "by hand" begins with. */
export function withStopSource(
  stored: StoredCheck,
  source: Exclude<StopSource, "file">,
): StoredCheck {
  const before = stopSource(stored);
  if (before === source) return stored;
  if (source === "pack") {
    const emptied = changeRecord(withHandAside(stored), (record) =>
      withField(record, "stop", undefined),
    );
    return withChoice(emptied, "stop.source", "pack");
  }
  return withChoice(before === "file" ? stored : withHandBack(stored), "stop.source", "hand");
}

/** The check with this stop of the pack, and which edition of it said so; a batch that was scanned goes with it. */
export function withPackStop(
  stored: StoredCheck,
  stop: PackStop,
  pack: Pack,
  unit: LengthUnit,
  batch?: string,
): StoredCheck {
  const own = { ...stopFromPack(stop), ...(batch !== undefined && { batch }) };
  const taken = changeRecord(chooseStop(withHandAside(stored), own, unit), (record) =>
    withField(record, "reference", takenFrom(pack, { ...record.reference, stop: stop.id })),
  );
  return withChoice(withChoice(taken, "stop.source", "pack"), "stop.packId", stop.id);
}
