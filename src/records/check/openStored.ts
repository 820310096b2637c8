import type { State } from "../../physics/fitment.ts";
import type { Entry } from "../entry/entry.ts";
import { isPlainObject, type PlainObject } from "../text/plainObject.ts";
import { type Keep, listOf, number, oneOf, text } from "../text/salvage.ts";
import type { PartialCorner } from "./checkRecord.ts";
import { choicesApart } from "./choicesAmongEntries.ts";
import { openCorner, openHandStop, openRecord } from "./openRecord.ts";
import type { Aside, Progress, StoredCheck } from "./storedCheck.ts";

const texts = listOf(text);

function entryOf(value: unknown): Entry | undefined {
  if (!isPlainObject(value)) return undefined;
  const { tool, reach, by, ...entry } = value;
  const unit = (text(value.unit) ?? "mm") as Entry["unit"];
  return {
    ...entry,
    texts: texts(value.texts) ?? [],
    unit,
    tol: text(value.tol) ?? "",
    ...(typeof tool === "string" && { tool }),
    ...(typeof reach === "string" && { reach }),
    ...(typeof by === "string" && { by }),
  };
}

/** Up to the fourth version of the store, what waits aside stood as JSON in an entry's text. */
const asideEntries = {
  left: "aside.left",
  right: "aside.right",
  handStop: "aside.stop.hand",
} as const;

function fromText(entries: PlainObject, id: string): unknown {
  const entry = Object.hasOwn(entries, id) ? entries[id] : undefined;
  const [json] = isPlainObject(entry) ? (texts(entry.texts) ?? []) : [];
  if (json === undefined) return undefined;
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

function asideOf(value: unknown, entries: PlainObject): Aside | undefined {
  const given = isPlainObject(value) ? value : {};
  const stands = (name: keyof typeof asideEntries): unknown =>
    given[name] ?? fromText(entries, asideEntries[name]);
  const corner = (side: "left" | "right"): PartialCorner | undefined => {
    const found = stands(side);
    return openCorner(isPlainObject(found) ? { ...found, side } : undefined);
  };
  const [left, right, hand] = [corner("left"), corner("right"), openHandStop(stands("handStop"))];
  if (!left && !right && !hand) return undefined;
  return { ...(left && { left }), ...(right && { right }), ...(hand && { handStop: hand }) };
}

function entriesOf(value: PlainObject): { readonly [id: string]: Entry } {
  const old: readonly string[] = Object.values(asideEntries);
  const kept = Object.entries(value).flatMap(([id, item]) => {
    const entry = id === "__proto__" || old.includes(id) ? undefined : entryOf(item);
    return entry === undefined ? [] : [[id, entry] as const];
  });
  return Object.fromEntries(kept);
}

function progressOf(value: unknown): Progress {
  const progress = isPlainObject(value) ? value : {};
  return {
    ...progress,
    step: text(progress.step) ?? "",
    skipped: texts(progress.skipped) ?? [],
    cautionsFor: oneOf("level", "raised")(progress.cautionsFor) ?? null,
    stood: texts(progress.stood) ?? [],
    rightGeometry: oneOf("same", "own")(progress.rightGeometry) ?? null,
  };
}

function timeOf(...values: readonly unknown[]): string {
  return (
    listOf(text)(values)?.find((time) => !Number.isNaN(Date.parse(time))) ??
    "1970-01-01T00:00:00.000Z"
  );
}

const state: Keep<State> = oneOf("ok", "care", "no", "unsure");

/**
 * What any version of Stopfit stored of a check, in today's shape: the one way in for what comes from a
 * database or a backup. What an older version did not have gets its beginning; what cannot be what it
 * says is left out, everything else stays. Null where it does not even have an id.
 */
export function openStored(value: unknown): StoredCheck | null {
  if (!isPlainObject(value) || typeof value.id !== "string" || value.id === "") return null;
  const { id } = value;
  const createdAt = timeOf(value.createdAt, value.updatedAt);
  const entries = isPlainObject(value.entries) ? value.entries : {};
  const { deletedAt: _deleted, revision, lastVerdict, aside: _aside, ...rest } = value;
  const deletedAt = text(value.deletedAt);
  const writes = number(revision);
  const verdict = state(lastVerdict);
  const aside = asideOf(value.aside, entries);
  return {
    ...rest,
    id,
    name: text(value.name) ?? "",
    createdAt,
    updatedAt: timeOf(value.updatedAt, createdAt),
    ...(deletedAt !== undefined && { deletedAt }),
    ...(writes !== undefined && writes >= 0 && { revision: Math.floor(writes) }),
    ...(verdict !== undefined && { lastVerdict: verdict }),
    record: openRecord(value.record, id, createdAt),
    ...choicesApart(entriesOf(entries), value.choices),
    ...(aside !== undefined && { aside }),
    progress: progressOf(value.progress),
  };
}
