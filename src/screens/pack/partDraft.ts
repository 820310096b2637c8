import { type LengthUnit, plainDecimal } from "../../records/entry/units.ts";
import type { PackStop, TestConditions } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { type DraftReader, type ItemDraft, numberText } from "./itemDraft.ts";

export const conditionNames = [
  "temperature",
  "preload",
  "conditioning",
  "rest",
  "specimen",
] as const satisfies readonly (keyof TestConditions)[];

/** What of a stop makes it a part that can be ordered, as texts to edit. */
export function partTexts(stop: PackStop, unit: LengthUnit): ItemDraft["texts"] {
  const texts: { [field: string]: string } = {
    partNumber: stop.partNumber ?? "",
    revision: stop.revision ?? "",
    state: stop.state ?? "",
    replacedBy: stop.replacedBy ?? "",
    build: stop.build ?? "",
    usableTolMm: numberText(stop.usableTolMm, "length", unit),
    forceTol: stop.forceTolShare === undefined ? "" : plainDecimal(100 * stop.forceTolShare),
    spacers: (stop.spacersMm ?? []).map((mm) => numberText(mm, "length", unit)).join("; "),
  };
  for (const name of conditionNames) texts[`conditions.${name}`] = stop.conditions?.[name] ?? "";
  return texts;
}

type PartFields = Pick<
  PackStop,
  | "partNumber"
  | "revision"
  | "state"
  | "replacedBy"
  | "build"
  | "usableTolMm"
  | "forceTolShare"
  | "spacersMm"
  | "conditions"
>;

/** The stop without what this edits. */
export function withoutPart(stop: Partial<PackStop>): Partial<PackStop> {
  const {
    partNumber: _number,
    revision: _revision,
    state: _state,
    replacedBy: _by,
    ...rest
  } = stop;
  const { build: _build, usableTolMm: _usable, forceTolShare: _force, ...others } = rest;
  const { spacersMm: _spacers, conditions: _conditions, ...kept } = others;
  return kept;
}

export function partOfDraft(reader: DraftReader, base: PackStop | null): PartFields {
  const partNumber = reader.text("partNumber");
  const revision = reader.text("revision");
  const replacedBy = reader.text("replacedBy");
  const build = reader.text("build");
  const state = (["offered", "discontinued"] as const).find(
    (each) => each === reader.text("state"),
  );
  const usableTolMm = reader.number(
    "usableTolMm",
    messages.ofUsableCompression,
    "length",
    "zeroOrMore",
  );
  const percent = reader.number("forceTol", messages.ofForces, "number", "zeroOrMore");
  if (percent !== undefined && percent >= 100) {
    reader.fault("forceTol", messages.ofForcesItMust);
  }
  const sameForce =
    base?.forceTolShare !== undefined &&
    plainDecimal(100 * base.forceTolShare) === reader.text("forceTol");
  const spacers = reader.list("spacers", messages.spacers, "length");
  const conditions: { [Name in (typeof conditionNames)[number]]?: string } = {};
  for (const name of conditionNames) {
    const text = reader.text(`conditions.${name}`);
    if (text !== undefined) conditions[name] = text;
  }
  if (revision !== undefined && partNumber === undefined) {
    reader.fault("partNumber", messages.partNumberRevisionIs);
  }
  return {
    ...(partNumber !== undefined && { partNumber }),
    ...(revision !== undefined && { revision }),
    ...(state !== undefined && { state }),
    ...(replacedBy !== undefined && { replacedBy }),
    ...(build !== undefined && { build }),
    ...(usableTolMm !== undefined && { usableTolMm }),
    ...(percent !== undefined && {
      forceTolShare: sameForce ? (base?.forceTolShare ?? 0) : percent / 100,
    }),
    ...(spacers !== undefined && { spacersMm: spacers }),
    ...(Object.keys(conditions).length > 0 && { conditions }),
  };
}
