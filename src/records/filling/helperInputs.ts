import type { Toleranced } from "../../physics/estimates/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { parseText } from "../entry/entry.ts";
import type { EntryKind } from "../entry/readingCatalogue.ts";

/** What an estimate is made from: kept as typed beside the record. */
export interface HelperInput {
  readonly id: string;
  readonly kind: EntryKind;
  /** The ± where none is typed, from the value, model's unit. Common practice. */
  readonly usualTolerance: (value: number) => number;
}

export const helperInputs = {
  axleMass: { id: "axleMassKg", kind: "mass", usualTolerance: (mass) => 0.02 * mass },
  payloadTotal: { id: "payload.total", kind: "mass", usualTolerance: (mass) => 0.05 * mass },
  tongue: { id: "payload.tongue", kind: "mass", usualTolerance: (mass) => 0.1 * mass },
  overhang: { id: "payload.overhang", kind: "length", usualTolerance: () => 20 },
  wheelbase: { id: "payload.wheelbase", kind: "length", usualTolerance: () => 20 },
  axleRating: { id: "payload.rating", kind: "mass", usualTolerance: () => 0 },
  sagLoad: { id: "wheelRate.load", kind: "mass", usualTolerance: (mass) => 0.03 * mass },
  sag: { id: "wheelRate.sag", kind: "length", usualTolerance: () => 2 },
  coilWire: { id: "coil.wire", kind: "length", usualTolerance: () => 0.1 },
  coilOutside: { id: "coil.outside", kind: "length", usualTolerance: () => 1 },
  coilActive: { id: "coil.active", kind: "number", usualTolerance: () => 0.25 },
  blockHardness: { id: "block.hardness", kind: "number", usualTolerance: () => 5 },
  blockDiameter: { id: "block.diameter", kind: "length", usualTolerance: () => 2 },
  coilRatio: { id: "coil.ratio", kind: "number", usualTolerance: (ratio) => 0.03 * ratio },
} as const satisfies { readonly [name: string]: HelperInput };

/** The value and its ±, model's unit; null while either can't be read. */
export function helperToleranced(stored: StoredCheck, input: HelperInput): Toleranced | null {
  const entry = stored.entries[input.id];
  if (!entry) return null;
  const value = parseText(entry.texts[0] ?? "", input.kind, entry.unit, "aboveZero");
  if (!value.ok) return null;
  if (entry.tol.trim() === "") {
    return { value: value.value.value, tol: input.usualTolerance(value.value.value) };
  }
  const tol = parseText(entry.tol, input.kind, entry.unit, "zeroOrMore");
  return tol.ok ? { value: value.value.value, tol: tol.value.value } : null;
}
