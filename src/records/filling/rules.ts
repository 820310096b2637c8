import type { DesignEvent, Use, UseRules } from "../../physics/fitment.ts";
import { ruleValueNames } from "../../physics/readings/index.ts";
import { rulesOf } from "../../physics/road/index.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { type Entry, parseText } from "../entry/entry.ts";
import { withField } from "../entry/entryPath.ts";
import { type Pack, takenFrom } from "../pack/pack.ts";
import { same } from "../pack/packDifferences.ts";
import { chosen, movedTo, withChoice } from "./choice.ts";

export type EventField = "heightM" | "lengthM" | "speedKmPerH";

type Rules = Partial<UseRules>;

/** The house rules that this check took from the pack for its use. */
function houseRules({ record }: StoredCheck): Rules {
  return record.reference?.rules ?? {};
}

/** What is usual for the check's use: its house rules, and common practice where they say nothing. */
export function usualRules(stored: StoredCheck): UseRules {
  return rulesOf(stored.record.vehicle?.use ?? "daily", houseRules(stored));
}

/** The check with these rules, or none where they are empty. */
function withRules(stored: StoredCheck, rules: Rules): StoredCheck {
  const all = Object.keys(rules).length === 0 ? undefined : rules;
  return changeRecord(stored, (record) => withField(record, "rules", all));
}

/** The check with the house rules of the pack in use, for the use that it has. */
function withHouseRules(stored: StoredCheck, pack: Pack): StoredCheck {
  const use = stored.record.vehicle?.use;
  const rules = use && pack.rules?.[use];
  return changeRecord(stored, (record) => {
    const { reference } = record;
    const taken = takenFrom(pack, { ...reference, rules });
    const unchanged = same(taken?.rules, reference?.rules);
    return unchanged ? record : withField(record, "reference", taken);
  });
}

function isTyped(stored: StoredCheck, name: string): boolean {
  return Boolean(stored.entries[`rules.${name}`]?.texts[0]?.trim());
}

/** What the check is judged by. */
export function rulesInForce({ record }: StoredCheck): UseRules {
  return rulesOf(record.vehicle?.use ?? "daily", record.rules);
}

/** The check for another use: its house rules take the place of the last one's, changes of its own stay. */
export function withUse(stored: StoredCheck, use: Use, pack: Pack): StoredCheck {
  const known = withEventEntries(stored);
  const before: Rules = houseRules(known);
  const own = Object.fromEntries(
    Object.entries(known.record.rules ?? {}).filter(
      ([name, value]) => isTyped(known, name) || !same(value, before[name as keyof UseRules]),
    ),
  );
  const marked = withHouseRules(
    changeRecord(known, (record) => ({ ...record, vehicle: { ...record.vehicle, use } })),
    pack,
  );
  return withEvents(withRules(marked, { ...houseRules(marked), ...own }));
}

/** Whether the pack in use has other house rules for this use than the check took. */
export function houseRulesSince(stored: StoredCheck, pack: Pack): boolean {
  const use = stored.record.vehicle?.use;
  return use !== undefined && !same(pack.rules?.[use] ?? {}, houseRules(stored));
}

/** What is written of one rule: nothing where it is as is usual, but for what the house rules say. */
function ruleWritten<Name extends keyof UseRules>(
  stored: StoredCheck,
  name: Name,
  value: UseRules[Name],
): UseRules[Name] | undefined {
  return same(value, usualRules(stored)[name]) ? houseRules(stored)[name] : value;
}

/** An emptied field goes back to the house rules. */
export function withHouseNumbers(stored: StoredCheck): StoredCheck {
  const rules: { -readonly [Name in keyof UseRules]?: UseRules[Name] } = {
    ...stored.record.rules,
  };
  for (const name of ruleValueNames) {
    const value = houseRules(stored)[name];
    if (!isTyped(stored, name) && value !== undefined) rules[name] = value;
  }
  return same(rules, stored.record.rules ?? {}) ? stored : withRules(stored, rules);
}

export function eventEntryId(kind: DesignEvent["kind"], field: EventField): string {
  return `rules.${kind}.${field}`;
}

const leftOutId = (kind: DesignEvent["kind"]) => `rules.${kind}.leftOut` as const;

export function isLeftOut(stored: StoredCheck, kind: DesignEvent["kind"]): boolean {
  return chosen(stored, leftOutId(kind)) === "yes";
}

/** The value typed for one field of an event, in the model's unit; null while there is none to read. */
function eventValue(
  stored: StoredCheck,
  kind: DesignEvent["kind"],
  field: EventField,
): number | null {
  const entry = stored.entries[eventEntryId(kind, field)];
  if (!entry) return null;
  const length = field !== "speedKmPerH";
  const parsed = parseText(
    entry.texts[0] ?? "",
    length ? "length" : "roadSpeed",
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

/** Events of a file that are not those usual here, each once, can't be changed field by field. */
export function hasOwnEvents(stored: StoredCheck): boolean {
  const events = stored.record.rules?.events;
  const kinds = events?.map(({ kind }) => kind) ?? [];
  const usual = usualRules(stored).events.map(({ kind }) => kind);
  return (
    kinds.length !== new Set(kinds).size ||
    kinds.some((kind) => !usual.includes(kind)) ||
    chosen(stored, "rules.events") === "file"
  );
}

/** The record's events from what is typed; the record says nothing where they are the usual ones. */
export function withEvents(stored: StoredCheck): StoredCheck {
  if (hasOwnEvents(stored)) return stored;
  const usual = usualRules(stored).events;
  const events = usual
    .filter(({ kind }) => !isLeftOut(stored, kind))
    .map((event) => changedEvent(stored, event));
  const rules: Rules = stored.record.rules ?? {};
  return withRules(stored, withField(rules, "events", ruleWritten(stored, "events", events)));
}

export function withLeftOut(
  stored: StoredCheck,
  kind: DesignEvent["kind"],
  leftOut: boolean,
): StoredCheck {
  return withEvents(withChoice(stored, leftOutId(kind), leftOut ? "yes" : null));
}

export function withRoadClass(stored: StoredCheck, roadClass: UseRules["roadClass"]): StoredCheck {
  const rules: Rules = stored.record.rules ?? {};
  const written = ruleWritten(stored, "roadClass", roadClass);
  return withRules(stored, withField(rules, "roadClass", written));
}

export function withRoadKurtosis(
  stored: StoredCheck,
  roadKurtosis: UseRules["roadKurtosis"],
): StoredCheck {
  const rules: Rules = stored.record.rules ?? {};
  const written = ruleWritten(stored, "roadKurtosis", roadKurtosis);
  return withRules(stored, withField(rules, "roadKurtosis", written));
}

/** Everything as is usual for the use again, by the house rules of the pack in use. */
export function withUsualRules(stored: StoredCheck, pack: Pack): StoredCheck {
  const others = movedTo(stored, (id) => (id.startsWith("rules.") ? null : id));
  const emptied = withHouseRules({ ...stored, ...others }, pack);
  return withRules(emptied, houseRules(emptied));
}

/**
 * Entries and choices for the events of a record that was opened from a file, so that they can be changed like
 * typed ones. The very same check where there is nothing to add.
 */
export function withEventEntries(stored: StoredCheck): StoredCheck {
  const events = stored.record.rules?.events;
  if (!events || hasOwnEvents(stored)) return stored;
  const entries: Record<string, Entry> = { ...stored.entries };
  let choices = stored.choices;
  let added = false;
  const usual = usualRules(stored).events;
  for (const { kind } of usual) {
    if (events.some((event) => event.kind === kind) || choices[leftOutId(kind)]) continue;
    choices = { ...choices, [leftOutId(kind)]: "yes" };
    added = true;
  }
  for (const event of events) {
    const before = usual.find(({ kind }) => kind === event.kind);
    const put = (field: EventField, value: number, was: number | undefined) => {
      const id = eventEntryId(event.kind, field);
      if (value === was || entries[id]) return;
      entries[id] =
        field === "speedKmPerH"
          ? { texts: [String(value)], unit: "km/h", tol: "" }
          : { texts: [String(Number((1000 * value).toFixed(6)))], unit: "mm", tol: "" };
      added = true;
    };
    put("heightM", event.heightM, before?.heightM);
    if (event.kind !== "landing") {
      const driven = before?.kind === event.kind ? before : undefined;
      put("lengthM", event.lengthM, driven?.lengthM);
      put("speedKmPerH", event.speedKmPerH, driven?.speedKmPerH);
    }
  }
  return added ? { ...stored, entries, choices } : stored;
}
