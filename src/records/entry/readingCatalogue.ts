import type { FieldPath } from "../../physics/outcome.ts";
import {
  definitionOf,
  isBelievable as isBelievableValue,
  type LimitKind,
  type ReadingId,
  sideOf,
  type ValueDefinition,
  type ValueKind,
  type ValueName,
} from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { Message } from "../../words/message.ts";
import type { EntryUnit, LengthUnit } from "./units.ts";

export type EntryKind = ValueKind;

/** What is known of a value by its reading's id, or by its name alone: "left.gap", "gap", "ride.…". */
export function catalogueEntry(id: ReadingId | ValueName, limitKind?: LimitKind): ValueDefinition {
  return definitionOf(id, limitKind) as ValueDefinition;
}

/** "left gap", "right clearance over the tire", "lean of the stop": a field's name with its side. */
export function entryName(id: FieldPath, limitKind?: LimitKind): Message {
  const side = sideOf(id);
  const name = definitionOf(id, limitKind)?.name ?? messages.value;
  return side === null ? name : messages.sideName({ side, name });
}

/** Inside what is seen on vehicles? `value` in the model's unit. */
export function isBelievable(id: ReadingId, value: number): boolean {
  return isBelievableValue(catalogueEntry(id), value);
}

const unitsByKind: { readonly [Kind in EntryKind]: { readonly [Unit in LengthUnit]: EntryUnit } } =
  {
    length: { mm: "mm", in: "in" },
    angle: { mm: "deg", in: "deg" },
    mass: { mm: "kg", in: "lb" },
    rate: { mm: "N/mm", in: "lbf/in" },
    damping: { mm: "N·s/mm", in: "lbf·s/in" },
    force: { mm: "N", in: "lbf" },
    roadSpeed: { mm: "km/h", in: "mph" },
    contactRate: { mm: "per km", in: "per mile" },
    number: { mm: "", in: "" },
  };

/** The unit an entry of this kind is typed in by a person who works in `unit`. */
export function entryUnit(kind: EntryKind, unit: LengthUnit): EntryUnit {
  return unitsByKind[kind][unit];
}
