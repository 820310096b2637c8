import type { RemeasureItem, RemeasureLevel } from "../../physics/remeasure/index.ts";
import type { Sentence, StoredSentence, Words } from "../../words/message.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import { setEntry } from "../filling/changes.ts";
import { isBlank, isSameEntry, withEarlier } from "./earlierValues.ts";
import type { HowDone, ReadingNow, RemeasureWalk } from "./underWay.ts";

/** The walk under way; null where there is none, or where what is stored is none. */
export function walkOf({ again }: StoredCheck): RemeasureWalk | null {
  const sound =
    again != null &&
    (again.level === "unsure" || again.level === "care") &&
    Array.isArray(again.done) &&
    again.done.every((each) => typeof each?.reading === "string") &&
    (again.now === null ||
      (typeof again.now?.reading === "string" && Array.isArray(again.now.sentence)));
  return sound ? again : null;
}

export function startWalk(stored: StoredCheck, level: RemeasureLevel): StoredCheck {
  return { ...stored, again: { level, done: [], now: null, left: 0, just: null } };
}

/** How what is stored is put into words: the name of a tool, and a sentence with its quantities apart. */
export interface StoredWording {
  said(words: Words): string;
  worded(sentence: Sentence): StoredSentence;
}

/** The walk at its next reading. `left`: how many the plan holds, with this one. */
export function openReading(
  stored: StoredCheck,
  item: RemeasureItem,
  left: number,
  { said, worded }: StoredWording,
): StoredCheck {
  const walk = walkOf(stored);
  if (walk === null) return stored;
  const { reading, forecast, sentence } = item;
  const way = forecast?.way;
  const now: ReadingNow = {
    reading,
    before: stored.entries[reading] ?? null,
    tool: way?.kind === "tool" ? { id: way.tool.id, name: said(way.tool.name) } : null,
    removes: forecast?.removed ?? null,
    sentence: worded(sentence),
    doubt: forecast && {
      about: forecast.about,
      side: forecast.side,
      halfWidthMm: forecast.halfWidthNowMm,
    },
  };
  return { ...stored, again: { ...walk, now, left } };
}

/** Empty, to be typed anew; with another tool where one is named, whose ± then holds. */
export function takeAnew(stored: StoredCheck, tool: string | null): StoredCheck {
  const now = walkOf(stored)?.now;
  if (!now?.before) return stored;
  const entry: Entry = {
    ...now.before,
    texts: [""],
    ...(tool !== null && { tol: "", tool }),
  };
  return setEntry(stored, now.reading, entry);
}

/** One more repeat, to be typed, beside those that stand there. */
export function addRepeat(stored: StoredCheck): StoredCheck {
  const now = walkOf(stored)?.now;
  const entry = now && stored.entries[now.reading];
  return entry ? setEntry(stored, now.reading, { ...entry, texts: [...entry.texts, ""] }) : stored;
}

/** What stood there before, again. */
export function putBack(stored: StoredCheck): StoredCheck {
  const now = walkOf(stored)?.now;
  return now?.before ? setEntry(stored, now.reading, now.before) : stored;
}

/** Has the reading been changed since the walk came to it? */
export function isRetaken(stored: StoredCheck): boolean {
  const now = walkOf(stored)?.now;
  if (!now) return false;
  const entry = stored.entries[now.reading];
  return !isBlank(entry) && !isSameEntry(entry, now.before ?? undefined);
}

/** Nothing is lost by going on: an emptied reading has its old value back, a changed one keeps it as earlier. */
function closeReading(stored: StoredCheck): StoredCheck {
  const now = walkOf(stored)?.now;
  if (!now?.before) return stored;
  const entry = stored.entries[now.reading];
  if (isBlank(entry)) return putBack(stored);
  return isSameEntry(entry, now.before) ? stored : withEarlier(stored, now.reading, now.before);
}

/** The walk between two readings, this one done with. */
export function finishReading(stored: StoredCheck, how: HowDone): StoredCheck {
  const walk = walkOf(stored);
  if (!walk?.now) return stored;
  const closed = closeReading(stored);
  const { reading, doubt } = walk.now;
  return {
    ...closed,
    again: {
      ...walk,
      done: [...walk.done, { reading, how }],
      now: null,
      just: how === "taken" ? doubt : null,
    },
  };
}

/** The check without a walk; what was taken so far stays. */
export function leaveWalk(stored: StoredCheck): StoredCheck {
  const { again: _, ...left } = closeReading(stored);
  return left;
}
