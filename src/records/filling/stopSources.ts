import { changeAside, changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { withField } from "../entry/entryPath.ts";
import type { LengthUnit } from "../entry/units.ts";
import { type Pack, type PackStop, stopFromPack, takenFrom } from "../pack/pack.ts";
import { chooseStop, setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";
import { withTestedAtSpeed } from "./testedAtSpeed.ts";

export type StopSource = "pack" | "hand" | "file";

export function stopSource(stored: StoredCheck): StopSource | null {
  const source = chosen(stored, "stop.source");
  if (source === "pack" || source === "hand") return source;
  return stored.record.stop?.curve ? "file" : null;
}

const asidePrefix = "aside.stop.hand.";

/** What was typed by hand waits beside the record while a stop of the pack is chosen. */
function withHandAside(stored: StoredCheck): StoredCheck {
  const source = stopSource(stored);
  if (source !== "hand" && source !== "file") return stored;
  const entries: Record<string, Entry> = { ...stored.entries };
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (id.startsWith("stop.") && id !== "stop.source") {
      entries[`${asidePrefix}${id}`] = entry;
      delete entries[id];
    }
  }
  const {
    freeHeight: _height,
    curve: _curve,
    damping: _damping,
    ...plain
  } = stored.record.stop ?? {};
  const { usableCompressionMm: _usable, usableTolMm: _tol, restLoss: _loss, ...rest } = plain;
  const { staticShare: _share, estimated: _estimated, ...fields } = rest;
  return changeAside({ ...stored, entries }, "handStop", fields);
}

function withHandBack(stored: StoredCheck): StoredCheck {
  const { testedAtSpeed, ...named } = stored.aside?.handStop ?? {};
  const others: Record<string, Entry> = {};
  const typed: [string, Entry][] = [];
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (id.startsWith(asidePrefix)) typed.push([id.slice(asidePrefix.length), entry]);
    else if (!id.startsWith("stop.") || id === "stop.source") others[id] = entry;
  }
  const emptied = changeRecord({ ...stored, entries: others }, (record) => ({
    ...record,
    stop: named,
  }));
  const filled = typed.reduce((current, [id, entry]) => setEntry(current, id, entry), emptied);
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
