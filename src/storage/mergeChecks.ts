import { parseReadingId } from "../physics/readings/index.ts";
import { withMergedAdvice } from "../records/check/advised.ts";
import type { PartialCorner } from "../records/check/checkRecord.ts";
import type { ChoiceId } from "../records/check/choices.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import { recordWithEntry, withField } from "../records/entry/entryPath.ts";
import { movedTo } from "../records/filling/choice.ts";
import { isPlainObject, type PlainObject } from "../records/text/plainObject.ts";
import { withMergedPhotos } from "./mergePhotos.ts";
import { isSame } from "./sameContent.ts";

/** Lists whose items are told apart by a field of theirs, not by their place. */
function keyOf(value: unknown): string | null {
  return isPlainObject(value) && typeof value.side === "string" ? value.side : null;
}

/** An entry or a reading: its number, unit, ±, and who took it with what, are one thing. */
function isOneThing({ texts, values }: PlainObject): boolean {
  return Array.isArray(texts) || Array.isArray(values);
}

/**
 * Joins two versions that grew from `base`, field by field: what only one side changed is taken from
 * that side; what both changed is taken from `mine`, the one written later.
 */
function mergeValue(base: unknown, mine: unknown, theirs: unknown): unknown {
  if (isSame(mine, theirs) || isSame(base, theirs)) return mine;
  if (isSame(base, mine)) return theirs;
  if (isPlainObject(mine) && isPlainObject(theirs) && !isOneThing(mine))
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
  if (all.every((item) => keyOf(item) !== null)) {
    const find = (list: unknown[], key: string): unknown =>
      list.find((item) => keyOf(item) === key);
    return ["left", "right"]
      .map((key) => mergeValue(find(base, key), find(mine, key), find(theirs, key)))
      .filter((item) => item !== undefined);
  }
  const objects = all.every(isPlainObject);
  if (objects && base.length === mine.length && mine.length === theirs.length) {
    return mine.map((item, index) => mergeValue(base[index], item, theirs[index]));
  }
  return mine;
}

type Joined = Pick<StoredCheck, "record" | "entries" | "choices">;

/**
 * The record's field follows the entry where both changed that, and where it is made of two entries of
 * which each may have changed one.
 */
function withEntriesAgreeing(
  { record, entries, choices }: Joined,
  base: StoredCheck,
  mine: StoredCheck,
  theirs: StoredCheck,
): Joined {
  const agreed = Object.entries(entries).reduce((current, [id, entry]) => {
    const [before, ours, others] = [base.entries[id], mine.entries[id], theirs.entries[id]];
    if (isSame(ours, others)) return current;
    const bothChanged = !isSame(ours, before) && !isSame(others, before);
    const isOfTwo = parseReadingId(id)?.of === "settle";
    return bothChanged || isOfTwo ? recordWithEntry(current, id, entry, entries) : current;
  }, record);
  return { record: agreed, entries, choices };
}

/** Entries and choices of which those that begin so are one version's. */
function withThoseOf(
  joined: Joined,
  prefix: string,
  version: StoredCheck,
): Pick<StoredCheck, "entries" | "choices"> {
  const others = movedTo(joined, (id) => (id.startsWith(prefix) ? null : id));
  const own = movedTo(version, (id) => (id.startsWith(prefix) ? id : null));
  return {
    entries: { ...others.entries, ...own.entries },
    choices: { ...others.choices, ...own.choices },
  };
}

function cornerOf({ record }: StoredCheck, side: string): PartialCorner | undefined {
  return record.corners.find((corner) => corner.side === side);
}

/**
 * Limits go by their place. Where there are more in one version than in another, one version's were taken
 * whole, and their entries and choices with them: else the reading of one would stand under another. So were
 * those of a side that one version has taken out.
 */
function withSidesOfOne(
  joined: Joined,
  base: StoredCheck,
  mine: StoredCheck,
  theirs: StoredCheck,
): Joined {
  return ["left", "right"].reduce((agreed, side) => {
    const [before, ours, others] = [base, mine, theirs].map((check) => cornerOf(check, side));
    const wasTakenOut = before !== undefined && (ours === undefined || others === undefined);
    const [limitsBefore = [], limits = [], othersLimits = []] = [before, ours, others].map(
      (corner) => corner?.limits,
    );
    const asMany = limitsBefore.length === limits.length && limits.length === othersLimits.length;
    if (asMany && !wasTakenOut) return agreed;
    const unchanged = wasTakenOut ? isSame(before, ours) : isSame(limitsBefore, limits);
    const taken = unchanged ? theirs : mine;
    const corners = agreed.record.corners.map((corner) =>
      corner.side === side ? { ...corner, limits: cornerOf(taken, side)?.limits ?? [] } : corner,
    );
    const prefix = wasTakenOut ? `${side}.` : `${side}.limits.`;
    return {
      record: { ...agreed.record, corners },
      ...withThoseOf(agreed, prefix, taken),
    };
  }, joined);
}

const stopChoices = ["stop.source", "stop.packId"] as const satisfies readonly ChoiceId[];

/** A stop that one version has chosen is that one's whole: what the other did was done to another stop. */
function withStopOfOne(
  joined: Joined,
  base: StoredCheck,
  mine: StoredCheck,
  theirs: StoredCheck,
): Joined {
  const hasChosen = ({ record, choices }: StoredCheck): boolean =>
    record.stop !== undefined && stopChoices.some((id) => choices[id] !== base.choices[id]);
  const chooser = [mine, theirs].find(hasChosen);
  if (chooser === undefined) return joined;
  return {
    record: withField(joined.record, "stop", chooser.record.stop),
    ...withThoseOf(joined, "stop.", chooser),
  };
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
  const { progress, name, earlier, aside, ...merged } = mergeObject(
    base as unknown as PlainObject,
    mine as unknown as PlainObject,
    theirs as unknown as PlainObject,
  ) as unknown as StoredCheck;
  const agreeing = [withEntriesAgreeing, withSidesOfOne, withStopOfOne].reduce<Joined>(
    (current, agree) => agree(current, base, mine, theirs),
    merged,
  );
  const record = withMergedPhotos(
    withMergedAdvice(agreeing.record, mine.record.advised, theirs.record.advised),
    base.record.photos,
    mine.record.photos,
    theirs.record.photos,
  );
  const { entries, choices } = agreeing;
  const joined = { record, entries, choices };
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
