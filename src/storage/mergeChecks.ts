import { limitOf } from "../physics/readings/index.ts";
import { withMergedAdvice } from "../records/check/advised.ts";
import type { PartialCheckRecord } from "../records/check/checkRecord.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { Entry } from "../records/entry/entry.ts";
import { limitIn, recordWithEntry } from "../records/entry/entryPath.ts";
import { isPlainObject, type PlainObject } from "../records/text/plainObject.ts";
import { withMergedPhotos } from "./mergePhotos.ts";
import { isSame } from "./sameContent.ts";

/** Lists whose items are told apart by a field of theirs, not by their place. */
function keyOf(value: unknown): string | null {
  return isPlainObject(value) && typeof value.side === "string" ? value.side : null;
}

/**
 * Joins two versions that grew from `base`, field by field: what only one side changed is taken from
 * that side; what both changed is taken from `mine`, the one written later.
 */
function mergeValue(base: unknown, mine: unknown, theirs: unknown): unknown {
  if (isSame(mine, theirs) || isSame(base, theirs)) return mine;
  if (isSame(base, mine)) return theirs;
  if (isPlainObject(mine) && isPlainObject(theirs))
    return mergeObject(isPlainObject(base) ? base : {}, mine, theirs);
  if (Array.isArray(mine) && Array.isArray(theirs)) {
    return mergeList(Array.isArray(base) ? base : [], mine, theirs);
  }
  return mine;
}

function mergeObject(base: PlainObject, mine: PlainObject, theirs: PlainObject): PlainObject {
  const merged: { [key: string]: unknown } = {};
  for (const key of new Set([...Object.keys(mine), ...Object.keys(theirs)])) {
    const value = mergeValue(base[key], mine[key], theirs[key]);
    if (value !== undefined) merged[key] = value;
  }
  return merged;
}

function mergeList(base: unknown[], mine: unknown[], theirs: unknown[]): unknown[] {
  const all = [...base, ...mine, ...theirs];
  if (all.length > 0 && all.every((item) => keyOf(item) !== null)) {
    const find = (list: unknown[], key: string): unknown =>
      list.find((item) => keyOf(item) === key);
    const keys = ["left", "right"].filter((key) => all.some((item) => keyOf(item) === key));
    return keys
      .map((key) => mergeValue(find(base, key), find(mine, key), find(theirs, key)))
      .filter((item) => item !== undefined);
  }
  const objects = all.every(isPlainObject);
  if (objects && base.length === mine.length && mine.length === theirs.length) {
    return mine.map((item, index) => mergeValue(base[index], item, theirs[index]));
  }
  return mine;
}

/** Where both changed one entry, the record's field follows the entry that was taken. */
function withDisputedEntries(
  base: StoredCheck,
  mine: StoredCheck,
  theirs: StoredCheck,
  record: PartialCheckRecord,
): PartialCheckRecord {
  return Object.entries(mine.entries).reduce((agreed, [id, entry]) => {
    const others = [base.entries[id], theirs.entries[id]];
    const disputed =
      others.every((other) => !isSame(entry, other)) && !isSame(others[0], others[1]);
    return disputed ? recordWithEntry(agreed, id, entry, mine.entries) : agreed;
  }, record);
}

/** A limit taken out on one side moves the others: its entries and readings must agree again. */
function withLimitsAgreeing(
  record: PartialCheckRecord,
  entries: { readonly [id: string]: Entry },
): { record: PartialCheckRecord; entries: { readonly [id: string]: Entry } } {
  let agreed = record;
  const kept: { [id: string]: Entry } = {};
  for (const [id, entry] of Object.entries(entries)) {
    if (limitOf(id) !== null) {
      if (limitIn(record, id) === undefined) continue;
      agreed = recordWithEntry(agreed, id, entry);
    }
    kept[id] = entry;
  }
  return { record: agreed, entries: kept };
}

/**
 * The check that loses nothing typed in two tabs that both began from `base`. Newer wins where both
 * changed the very same field. A check edited in one tab and deleted in the other is there again.
 */
export function mergeChecks(
  base: StoredCheck,
  mine: StoredCheck,
  theirs: StoredCheck,
): StoredCheck {
  const {
    record: joinedRecord,
    entries,
    progress,
    name,
    earlier,
    aside,
  } = mergeObject(
    base as unknown as PlainObject,
    mine as unknown as PlainObject,
    theirs as unknown as PlainObject,
  ) as unknown as StoredCheck;
  const record = withMergedPhotos(
    withMergedAdvice(
      withDisputedEntries(base, mine, theirs, joinedRecord),
      mine.record.advised,
      theirs.record.advised,
    ),
    base.record.photos,
    mine.record.photos,
    theirs.record.photos,
  );
  const limitCounts = (check: StoredCheck): string =>
    check.record.corners.map(({ side, limits }) => `${side}${limits.length}`).join();
  const joined =
    limitCounts(mine) === limitCounts(theirs)
      ? { record, entries }
      : withLimitsAgreeing(record, entries);
  const { deletedAt: _, lastVerdict, aside: _aside, ...kept } = mine;
  const stands = lastVerdict !== undefined && isSame(joined.record, mine.record);
  return {
    ...kept,
    ...joined,
    progress,
    name,
    ...(earlier && { earlier }),
    ...(aside && { aside }),
    ...(stands && { lastVerdict }),
  };
}
