import type { State } from "../../physics/fitment.ts";
import type { Entry } from "../entry/entry.ts";
import type { EarlierValues, RemeasureWalk } from "../remeasure/underWay.ts";
import type { CheckStop, PartialCheckRecord, PartialCorner } from "./checkRecord.ts";
import type { Choices } from "./choices.ts";
import { checkFormat, checkVersion } from "./recordFormat.ts";

export interface Progress {
  readonly step: string;
  readonly skipped: readonly string[];
  /** What the cautions were last acknowledged for; null: not yet. */
  readonly cautionsFor: "level" | "raised" | null;
  /** The steps of standing the vehicle that are done. */
  readonly stood: readonly string[];
  readonly rightGeometry: "same" | "own" | null;
}

/** Of a stop typed by hand, what no entry holds. */
export type HandStop = Partial<
  Pick<
    CheckStop,
    | "name"
    | "duty"
    | "testedAtSpeed"
    | "branches"
    | "testDoubt"
    | "partNumber"
    | "revision"
    | "batch"
  >
>;

/**
 * What waits beside the record until it is wanted again: a side that is not measured any more, and the
 * stop typed by hand while one of a pack is chosen. Their entries and choices wait under "aside.".
 */
export interface Aside {
  readonly left?: PartialCorner;
  readonly right?: PartialCorner;
  readonly handStop?: HandStop;
}

/** A check as the phone keeps it: the record as far as it can be read, what was typed and what was chosen. */
export interface StoredCheck {
  readonly id: string;
  readonly name: string;
  readonly createdAt: string;
  readonly updatedAt: string;
  readonly deletedAt?: string;
  /** Counted up by the store at each write; absent until first kept. */
  readonly revision?: number;
  /** The verdict that the answer last gave; what has changed since is not in it. */
  readonly lastVerdict?: State;
  readonly record: PartialCheckRecord;
  readonly entries: { readonly [id: string]: Entry };
  readonly choices: Choices;
  readonly aside?: Aside;
  readonly progress: Progress;
  /** Values that were taken anew since. */
  readonly earlier?: EarlierValues;
  /** The walk through the readings to take again, while one is under way. */
  readonly again?: RemeasureWalk;
}

const freshProgress: Progress = {
  step: "",
  skipped: [],
  cautionsFor: null,
  stood: [],
  rightGeometry: null,
};

/** A random UUID, also where the page is not served over https and randomUUID is absent. */
export function newId(): string {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

function nowText(): string {
  return new Date().toISOString();
}

/** An empty check with an id and a date. */
export function newStoredCheck(name = ""): StoredCheck {
  const id = newId();
  const createdAt = nowText();
  return {
    id,
    name,
    createdAt,
    updatedAt: createdAt,
    record: {
      format: checkFormat,
      version: checkVersion,
      id,
      createdAt,
      author: { role: "installer" },
      vehicle: { platformId: null, liftMm: 0 },
      corners: [],
    },
    entries: {},
    choices: {},
    progress: freshProgress,
  };
}

/** The check with its record changed in what is chosen, not typed: vehicle, use, axle, author … */
export function changeRecord(
  stored: StoredCheck,
  change: (record: PartialCheckRecord) => PartialCheckRecord,
): StoredCheck {
  return { ...stored, updatedAt: nowText(), record: change(stored.record) };
}

/** The check with one thing put aside, or with nothing in its place any more. */
export function changeAside<Name extends keyof Aside>(
  stored: StoredCheck,
  name: Name,
  value: Aside[Name] | undefined,
): StoredCheck {
  const { aside: { [name]: _, ...others } = {}, ...rest } = stored;
  const aside: Aside = value === undefined ? others : { ...others, [name]: value };
  const emptied = Object.keys(aside).length === 0;
  return { ...rest, updatedAt: nowText(), ...(!emptied && { aside }) };
}

export function changeProgress(stored: StoredCheck, change: Partial<Progress>): StoredCheck {
  return { ...stored, updatedAt: nowText(), progress: { ...stored.progress, ...change } };
}

export function renameStored(stored: StoredCheck, name: string): StoredCheck {
  return { ...stored, updatedAt: nowText(), name };
}

/** The same readings as a new check of its own. */
export function copyStored(stored: StoredCheck, name: string): StoredCheck {
  const id = newId();
  const createdAt = nowText();
  const { deletedAt: _deleted, revision: _revision, again: _walk, ...rest } = stored;
  return {
    ...rest,
    id,
    name,
    createdAt,
    updatedAt: createdAt,
    record: { ...stored.record, id, createdAt },
  };
}
