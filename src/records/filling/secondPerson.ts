import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { PartialCheckRecord, TypedReading } from "../check/checkRecord.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { type Entry, readEntry } from "../entry/entry.ts";
import { isReading, withField } from "../entry/entryPath.ts";
import { sourceIn, sourceOf } from "../entry/readingSource.ts";

const prefix = "second.";

/** What a second person can take again: every reading that was taken on this vehicle, in its order. */
export function secondReadings(stored: StoredCheck): readonly ReadingId[] {
  return Object.keys(stored.entries).filter((id): id is ReadingId => {
    if (
      !isReadingId(id) ||
      !isReading(id) ||
      id.startsWith("fullTravel.") ||
      id.startsWith("stop.")
    )
      return false;
    const reading = readingAt(stored, id);
    return reading !== null && sourceOf(reading) === "measured";
  });
}

/** The first person's reading, as far as it can be read. */
export function readingAt(stored: StoredCheck, id: string): TypedReading | null {
  const entry = stored.entries[id];
  const read = entry === undefined || !isReadingId(id) ? null : readEntry(id, entry);
  if (!read?.ok) return null;
  const source = sourceIn(stored.record, id);
  return source === null || source === "measured" ? read.value : { ...read.value, source };
}

export function secondEntry(stored: StoredCheck, id: string): Entry | undefined {
  return stored.entries[`${prefix}${id}`];
}

/**
 * What the second person sees of the check while measuring: where and how, and none of the first one's
 * numbers. Its entries are the second person's own.
 */
export function blindCheck(stored: StoredCheck): StoredCheck {
  const own = Object.entries(stored.entries).flatMap(([id, entry]) =>
    id.startsWith(prefix) ? [[id.slice(prefix.length), entry] as const] : [],
  );
  const { layout, corners } = stored.record;
  return {
    ...stored,
    entries: Object.fromEntries(own),
    choices: {},
    record: {
      ...stored.record,
      ...(layout && { layout: { ...layout, readings: {} } }),
      corners: corners.map(({ side, limits }) => ({
        side,
        limits: limits.map(({ reading: _, distance: _distance, ...limit }) => limit),
      })),
    },
  };
}

/** The check with a reading as the second person typed it. */
export function withSecond(
  stored: StoredCheck,
  id: ReadingId,
  entry: Entry | undefined,
  by: string,
): StoredCheck {
  if (entry === undefined) return stored;
  const read = readEntry(id, entry);
  const { second } = stored.record;
  const readings = withField(
    second?.readings ?? {},
    id,
    read.ok ? { ...read.value, by } : undefined,
  );
  const none = Object.keys(readings).length === 0;
  const typed = { ...stored, entries: { ...stored.entries, [`${prefix}${id}`]: entry } };
  return changeRecord(typed, (record) =>
    withField(
      record,
      "second",
      none ? undefined : { by, at: second?.at ?? new Date().toISOString(), readings },
    ),
  );
}

export interface PersonDifference {
  readonly id: string;
  readonly tool: string | null;
  readonly first: number;
  readonly second: number;
  /** Second less first. */
  readonly difference: number;
}

/** What two people found otherwise, reading by reading. */
export function personDifferences(
  first: (id: string) => TypedReading | null,
  second: PartialCheckRecord["second"],
): readonly PersonDifference[] {
  return Object.entries(second?.readings ?? {}).flatMap(([id, reading]) => {
    const own = first(id);
    if (own === null || own.values.length === 0 || reading.values.length === 0) return [];
    const [one, other] = [meanOf(own), meanOf(reading)];
    const tool = own.tool !== undefined && own.tool === reading.tool ? own.tool : null;
    return [{ id, tool, first: one, second: other, difference: other - one }];
  });
}
