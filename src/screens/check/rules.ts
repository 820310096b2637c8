import type { DesignEvent, UseRules } from "../../physics/fitment.ts";
import { defaultRules } from "../../physics/road/useRules.ts";
import { parseText } from "../../records/entry.ts";
import { withField } from "../../records/entryPath.ts";
import { changeRecord, type Entry, type StoredCheck } from "../../records/storedCheck.ts";
import { chosen, withChoice } from "./choice.ts";

export type EventField = "heightM" | "lengthM" | "speedKmPerH";

export function usualRules(stored: StoredCheck): UseRules {
  return defaultRules[stored.record.vehicle?.use ?? "daily"];
}

export function eventEntryId(kind: DesignEvent["kind"], field: EventField): string {
  return `rules.${kind}.${field}`;
}

const leftOutId = (kind: DesignEvent["kind"]) => `rules.${kind}.leftOut`;

export function isLeftOut(stored: StoredCheck, kind: DesignEvent["kind"]): boolean {
  return chosen(stored, leftOutId(kind)) === "yes";
}

/** The value typed for one field of an event, in the model's unit; null while there is none to read. */
export function eventValue(
  stored: StoredCheck,
  kind: DesignEvent["kind"],
  field: EventField,
): number | null {
  const entry = stored.entries[eventEntryId(kind, field)];
  if (!entry) return null;
  const length = field !== "speedKmPerH";
  const parsed = parseText(
    entry.texts[0] ?? "",
    length ? "length" : "number",
    entry.unit,
    "aboveZero",
  );
  if (!parsed.ok) return null;
  return length ? parsed.value.value / 1000 : parsed.value.value;
}

function changedEvent(stored: StoredCheck, event: DesignEvent): DesignEvent {
  const value = (field: EventField) => eventValue(stored, event.kind, field);
  if (event.kind === "landing") return { ...event, heightM: value("heightM") ?? event.heightM };
  return {
    ...event,
    heightM: value("heightM") ?? event.heightM,
    lengthM: value("lengthM") ?? event.lengthM,
    speedKmPerH: value("speedKmPerH") ?? event.speedKmPerH,
  };
}

function isAsUsual(events: readonly DesignEvent[], usual: readonly DesignEvent[]): boolean {
  return JSON.stringify(events) === JSON.stringify(usual);
}

/** Events of a file that are not one obstacle and one landing can't be changed field by field. */
export function hasOwnEvents(stored: StoredCheck): boolean {
  const events = stored.record.rules?.events;
  const kinds = events?.map(({ kind }) => kind) ?? [];
  return kinds.length !== new Set(kinds).size || chosen(stored, "rules.events") === "file";
}

/** The record's events from what is typed; the record says nothing where they are the usual ones. */
export function withEvents(stored: StoredCheck): StoredCheck {
  if (hasOwnEvents(stored)) return stored;
  const usual = usualRules(stored).events;
  const events = usual
    .filter(({ kind }) => !isLeftOut(stored, kind))
    .map((event) => changedEvent(stored, event));
  return changeRecord(stored, (record) => {
    const rules = withField(
      record.rules ?? {},
      "events",
      isAsUsual(events, usual) ? undefined : events,
    );
    return withField(record, "rules", Object.keys(rules).length === 0 ? undefined : rules);
  });
}

export function withLeftOut(
  stored: StoredCheck,
  kind: DesignEvent["kind"],
  leftOut: boolean,
): StoredCheck {
  return withEvents(withChoice(stored, leftOutId(kind), leftOut ? "yes" : null));
}

export function withRoadClass(stored: StoredCheck, roadClass: UseRules["roadClass"]): StoredCheck {
  const own = roadClass === usualRules(stored).roadClass ? undefined : roadClass;
  return changeRecord(stored, (record) => {
    const rules = withField(record.rules ?? {}, "roadClass", own);
    return withField(record, "rules", Object.keys(rules).length === 0 ? undefined : rules);
  });
}

/** Everything as is usual for the use again. */
export function withUsualRules(stored: StoredCheck): StoredCheck {
  const entries: Record<string, Entry> = {};
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (!id.startsWith("rules.")) entries[id] = entry;
  }
  return changeRecord({ ...stored, entries }, (record) => withField(record, "rules", undefined));
}

/**
 * Entries for the events of a record that was opened from a file, so that they can be changed like
 * typed ones. The very same check where there is nothing to add.
 */
export function withEventEntries(stored: StoredCheck): StoredCheck {
  const events = stored.record.rules?.events;
  if (!events || hasOwnEvents(stored)) return stored;
  const entries: Record<string, Entry> = { ...stored.entries };
  let added = false;
  const usual = usualRules(stored).events;
  for (const { kind } of usual) {
    if (events.some((event) => event.kind === kind) || entries[leftOutId(kind)]) continue;
    entries[leftOutId(kind)] = { texts: ["yes"], unit: "", tol: "" };
    added = true;
  }
  for (const event of events) {
    const before = usual.find(({ kind }) => kind === event.kind);
    const put = (field: EventField, value: number, was: number | undefined) => {
      const id = eventEntryId(event.kind, field);
      if (value === was || entries[id]) return;
      entries[id] =
        field === "speedKmPerH"
          ? { texts: [String(value)], unit: "", tol: "" }
          : { texts: [String(Number((1000 * value).toFixed(6)))], unit: "mm", tol: "" };
      added = true;
    };
    put("heightM", event.heightM, before?.heightM);
    if (event.kind === "obstacle") {
      const obstacle = before?.kind === "obstacle" ? before : undefined;
      put("lengthM", event.lengthM, obstacle?.lengthM);
      put("speedKmPerH", event.speedKmPerH, obstacle?.speedKmPerH);
    }
  }
  return added ? { ...stored, entries } : stored;
}
