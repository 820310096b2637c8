import { parseReadingId } from "../physics/readings/index.ts";
import type { PartialCheckRecord } from "../records/check/checkRecord.ts";
import { withoutTicks } from "../records/check/fullTravel.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { Entry } from "../records/entry/entry.ts";
import { recordWithEntry, withField } from "../records/entry/entryPath.ts";
import { movedTo } from "../records/filling/choice.ts";
import { isPlainObject, type PlainObject } from "../records/text/plainObject.ts";
import { mergeChecks } from "./mergeChecks.ts";
import { contentOf, isSame } from "./sameContent.ts";

/** When a check last changed, its deletion included. */
function lastChange({ updatedAt, deletedAt }: StoredCheck): string {
  return deletedAt !== undefined && deletedAt > updatedAt ? deletedAt : updatedAt;
}

/** Things that are one whole: half of one and half of another would be neither. */
const wholes: readonly string[] = ["stop", "fitted", "photos", "aside"];
/** What tells one job, person, library or check of the whole travel from another: theirs is not mixed either. */
const identities: readonly string[] = [
  "id",
  "name",
  "by",
  "pack",
  "edition",
  "measure",
  "movement",
];

function isAnother(older: unknown, newer: unknown): boolean {
  if (!isPlainObject(older) || !isPlainObject(newer)) return false;
  return identities.some(
    (field) =>
      older[field] !== undefined &&
      newer[field] !== undefined &&
      !isSame(older[field], newer[field]),
  );
}

/** `older` without the wholes, and without things that are another's, of which `newer` has its own. */
function withoutOwn(older: PlainObject, newer: PlainObject): PlainObject {
  const rest = Object.entries(older).flatMap(([key, value]) => {
    const own = newer[key];
    if (own !== undefined && (wholes.includes(key) || isAnother(value, own))) return [];
    return [[key, isPlainObject(value) && isPlainObject(own) ? withoutOwn(value, own) : value]];
  });
  return Object.fromEntries(rest) as PlainObject;
}

/** Of the older's entries and choices, those that still belong to what the newer has. */
function thoseThatFit(
  older: StoredCheck,
  newer: StoredCheck,
): Pick<StoredCheck, "entries" | "choices"> {
  const groups = ({ record, aside }: StoredCheck): PlainObject => ({ ...record, aside });
  const [theirs, ours] = [groups(older), groups(newer)];
  const fits = (id: string): boolean => {
    const [first = ""] = id.split(".");
    const own = ours[first];
    return own === undefined || !(wholes.includes(first) || isAnother(theirs[first], own));
  };
  const isTyped = (id: string): boolean => older.entries[id]?.texts.some(Boolean) ?? true;
  const isOwn = (id: string): boolean =>
    Object.hasOwn(newer.entries, id) || Object.hasOwn(newer.choices, id);
  return movedTo(older, (id) => (isOwn(id) || (fits(id) && isTyped(id)) ? id : null));
}

/** The ± and the source of a ride figure are that figure's: of one that the newer has, they stay behind. */
function withRideOf(older: StoredCheck, newer: StoredCheck): StoredCheck {
  const { ride } = older.record;
  if (ride === undefined) return older;
  const own = newer.record.ride ?? {};
  const rest = <Of extends object>(marks: Of | undefined): Of | undefined => {
    const kept = Object.entries(marks ?? {}).filter(([name]) => !Object.hasOwn(own, name));
    return kept.length === 0 ? undefined : (Object.fromEntries(kept) as Of);
  };
  const lacking = withField(
    withField(ride, "tolerances", rest(ride.tolerances)),
    "estimated",
    rest(ride.estimated),
  );
  return { ...older, record: { ...older.record, ride: lacking } };
}

/** Where the layout is of another kind, its readings are others too. */
function isOtherLayout(older: StoredCheck, newer: StoredCheck): boolean {
  return isAnother({ name: older.record.layout?.kind }, { name: newer.record.layout?.kind });
}

function withLayoutOf(older: StoredCheck, newer: StoredCheck): StoredCheck {
  if (!isOtherLayout(older, newer)) return older;
  return { ...older, record: withField(older.record, "layout", newer.record.layout) };
}

/**
 * The joined record where an entry and its field come from two sides: the field follows the entry. Fields
 * that the newer had stand, and typed geometry of another layout waits until that is chosen again.
 */
function withEntriesFollowed(
  record: PartialCheckRecord,
  entries: StoredCheck["entries"],
  newer: StoredCheck,
  older: StoredCheck,
): PartialCheckRecord {
  const isOther = isOtherLayout(older, newer);
  const follows = ([id, entry]: readonly [string, Entry]): boolean => {
    if (isOther && parseReadingId(id)?.of === "geometry") return false;
    if (!Object.hasOwn(newer.entries, id)) return true;
    return isSame(
      recordWithEntry(newer.record, id, { ...entry, texts: [] }, entries),
      newer.record,
    );
  };
  return Object.entries(entries)
    .filter(follows)
    .reduce((agreed, [id, entry]) => recordWithEntry(agreed, id, entry, entries), record);
}

/**
 * The newer of two versions with what only the older has: a reading that was taken on one phone and
 * never on the other is in both afterwards. What the newer has, cleared readings included, stands.
 */
export function withMissing(newer: StoredCheck, given: StoredCheck): StoredCheck {
  const { name, progress } = newer;
  const fitting = { ...given, name, progress, ...thoseThatFit(given, newer) };
  const older = withRideOf(withLayoutOf(fitting, newer), newer);
  const missing = withoutOwn(
    older as unknown as PlainObject,
    newer as unknown as PlainObject,
  ) as Partial<StoredCheck>;
  // With nothing as their past, what differs is the newer's, and the record follows its entries.
  const base = { record: { corners: [] }, entries: {}, choices: {} } as unknown as StoredCheck;
  const theirs = {
    ...missing,
    record: { corners: [], ...missing.record },
    entries: { ...missing.entries },
    choices: { ...missing.choices },
  } as unknown as StoredCheck;
  const joined = mergeChecks(base, newer, theirs);
  return { ...joined, record: withEntriesFollowed(joined.record, joined.entries, newer, given) };
}

/**
 * A backup's version of a check as this device takes it: what was acknowledged elsewhere is acknowledged
 * anew, so that nobody goes under a vehicle past cautions that someone else ticked.
 */
export function asTakenIn(backup: StoredCheck, madeHere: boolean): StoredCheck {
  if (madeHere) return backup;
  const { fullTravel } = backup.record;
  return {
    ...backup,
    entries: withoutTicks(backup.entries),
    ...(fullTravel && {
      record: { ...backup.record, fullTravel: { ...fullTravel, acknowledged: null } },
    }),
    progress: { ...backup.progress, cautionsFor: null, stood: [] },
  };
}

/**
 * What to store of a backup's version of a check where `current` is here; `current` itself where the
 * backup brings nothing. A version that this phone went on from is known by its count of writes, whatever
 * its clock said then. A check deleted here later stays among the deleted; none is deleted by a backup.
 */
export function joinedWithBackup(
  current: StoredCheck,
  backup: StoredCheck,
  madeHere: boolean,
): StoredCheck {
  if (isSame(contentOf(current), contentOf(backup))) return current;
  if (madeHere && (current.revision ?? 0) >= (backup.revision ?? 0)) return current;
  const hereIsNewer = lastChange(current) >= lastChange(backup);
  const joined = hereIsNewer ? withMissing(current, backup) : withMissing(backup, current);
  const { deletedAt: _, ...present } = joined;
  const staysDeleted = current.deletedAt !== undefined && hereIsNewer;
  const next = staysDeleted ? { ...present, deletedAt: current.deletedAt } : present;
  if (isSame(contentOf(next), contentOf(current))) return current;
  return next;
}
