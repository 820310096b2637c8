import { uses } from "../../physics/choices.ts";
import type { Message, Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { isPlainObject, type PlainObject } from "../text/plainObject.ts";
import type { Pack } from "./pack.ts";
import { packField } from "./packField.ts";
import { platformTitle } from "./platformTold.ts";

/** One field that differs: its plain name and both values; undefined: not given. */
export interface FieldDifference {
  /** "curve", "freeHeight", "layout.readings.armAngle", "limits.0". */
  readonly path: string;
  readonly name: Words;
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** One stop, platform or set of rules that the two packs do not share exactly. */
export interface PackDifference {
  /** Stable key for `choices`: "stop tall-firm", "platform …", "rules towing", "pack name". */
  readonly key: string;
  readonly list: "stop" | "platform" | "rules" | "pack";
  readonly id: string;
  readonly label: Words;
  readonly kind: "onlyMine" | "onlyTheirs" | "differs";
  /** Empty unless it differs. */
  readonly fields: readonly FieldDifference[];
}

/** Any stop, platform, rules or part of one, as plain data. */

/** One entry of a pack under its key. */
interface PackEntry {
  readonly list: PackDifference["list"];
  readonly id: string;
  readonly label: Words;
  readonly value: unknown;
}

export const headFields = [
  "name",
  "edition",
  "maker",
  "notes",
  "spacersMm",
  "repeatability",
] as const;
type HeadField = (typeof headFields)[number];

/** Everything a pack holds, under the keys of its differences; stops first, then platforms, rules, head. */
function packEntries(pack: Pack): ReadonlyMap<string, PackEntry> {
  const entries = new Map<string, PackEntry>();
  const add = (entry: PackEntry) => entries.set(`${entry.list} ${entry.id}`, entry);
  for (const stop of pack.stops) add({ list: "stop", id: stop.id, label: stop.name, value: stop });
  for (const platform of pack.platforms) {
    add({
      list: "platform",
      id: platform.id,
      label: platformTitle(platform),
      value: platform,
    });
  }
  for (const use of uses) {
    const value = pack.rules?.[use];
    if (value !== undefined)
      add({ list: "rules", id: use, label: messages.rulesForUse({ use }), value });
  }
  for (const field of headFields) {
    const value = pack[field];
    if (value !== undefined) add({ list: "pack", id: field, label: headLabel[field], value });
  }
  return entries;
}

const headLabel: { readonly [Field in HeadField]: Message } = {
  name: messages.nameOfLibrary,
  edition: messages.editionOfLibrary,
  maker: messages.maker,
  notes: messages.notesOfLibrary,
  spacersMm: messages.spacersThatCanBe,
  repeatability: messages.measuredOfReadings,
};

/** What differs between two packs: in the order of mine, then what only theirs has. */
export function packDifferences(mine: Pack, theirs: Pack): readonly PackDifference[] {
  const own = packEntries(mine);
  const other = packEntries(theirs);
  const differences: PackDifference[] = [];
  const order = ["stop", "platform", "rules", "pack"];
  for (const key of new Set([...own.keys(), ...other.keys()])) {
    const before = own.get(key);
    const after = other.get(key);
    const entry = before ?? after;
    if (entry === undefined) continue;
    const { list, id, label } = entry;
    if (before === undefined || after === undefined) {
      const kind = after === undefined ? "onlyMine" : "onlyTheirs";
      differences.push({ key, list, id, label, kind, fields: [] });
    } else if (!same(before.value, after.value)) {
      const fields = fieldDifferences(before.value, after.value, list === "pack" ? id : "");
      differences.push({ key, list, id, label, kind: "differs", fields });
    }
  }
  return differences.sort((a, b) => order.indexOf(a.list) - order.indexOf(b.list));
}

/** In which fields one stop, platform or set of rules differs from another. */
export function itemDifferences(mine: object, theirs: object): readonly FieldDifference[] {
  return fieldDifferences(mine, theirs, "");
}

/** Equal as data, whatever the order of the fields. */
export function same(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one) || Array.isArray(other)) {
    return (
      Array.isArray(one) &&
      Array.isArray(other) &&
      one.length === other.length &&
      one.every((value, place) => same(value, other[place]))
    );
  }
  if (!isPlainObject(one) || !isPlainObject(other)) return false;
  const names = namesOf(one, other);
  return names.every((name) => same(one[name], other[name]));
}

/** Names whose value is given in either. */
function namesOf(one: PlainObject, other: PlainObject): readonly string[] {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].filter(
    (name) => one[name] !== undefined || other[name] !== undefined,
  );
}

/** A reading, a table and a text are one field each; groups of them are gone into. */
function fieldDifferences(mine: unknown, theirs: unknown, path: string): FieldDifference[] {
  if (same(mine, theirs)) return [];
  const groups = [mine, theirs].filter((value) => value !== undefined);
  if (groups.length > 0 && groups.every((value) => isPlainObject(value) && !isReading(value))) {
    const one = (mine ?? {}) as PlainObject;
    const other = (theirs ?? {}) as PlainObject;
    return namesOf(one, other).flatMap((name) =>
      fieldDifferences(one[name], other[name], path === "" ? name : `${path}.${name}`),
    );
  }
  return [{ path, name: packField(path).name, mine, theirs }];
}

function isReading(value: unknown): boolean {
  return isPlainObject(value) && Array.isArray(value.values);
}
