import type { ReadingId } from "../../physics/outcome.ts";
import { definitionOf } from "../../physics/readings/definitionOf.ts";
import type { LimitKind } from "../../physics/readings/limitReadings.ts";
import { sideOf } from "../../physics/readings/readingId.ts";
import {
  isBelievable as isBelievableValue,
  type ValueDefinition,
  type ValueKind,
} from "../../physics/readings/valueDefinition.ts";
import type { EntryUnit, LengthUnit } from "./units.ts";

export type EntryKind = ValueKind;

const unknownEntry: ValueDefinition = {
  name: "value",
  kind: "number",
  usualTolerance: 0,
  allowed: "any",
  believable: [-1e9, 1e9],
};

/** What is known of one entry by its id: "pivotToStop", "left.gap", "right.limits.0", "ride.…". */
export function catalogueEntry(id: ReadingId, limitKind?: LimitKind): ValueDefinition {
  return definitionOf(id, limitKind) ?? unknownEntry;
}

/** "left gap", "right clearance over the tire", "lean of the stop": the name with its side. */
export function entryName(id: ReadingId, limitKind?: LimitKind): string {
  const side = sideOf(id);
  const { name } = catalogueEntry(id, limitKind);
  return side === null ? name : `${side} ${name}`;
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
    number: { mm: "", in: "" },
  };

/** The unit an entry of this kind is typed in by a person who works in `unit`. */
export function entryUnit(kind: EntryKind, unit: LengthUnit): EntryUnit {
  return unitsByKind[kind][unit];
}
