import type { CurvePoint, DampingPoint } from "../../physics/fitment.ts";
import { type LengthUnit, plainDecimal } from "../../records/entry/units.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import {
  DraftReader,
  type FieldFault,
  type ItemDraft,
  numberText,
  readingTexts,
} from "./itemDraft.ts";
import { mountOfDraft, mountTexts } from "./mountDraft.ts";
import { partOfDraft, partTexts, withoutPart } from "./partDraft.ts";

/** What the columns of a stop's tables hold. */
export const curveKinds = ["length", "force"] as const;
export const dampingKinds = ["length", "damping", "damping"] as const;

/** What a new stop begins with. */
export function stopDraft(stop: PackStop | null, unit: LengthUnit): ItemDraft {
  if (stop === null) return { unit, texts: { duty: "impact" }, tables: {} };
  const cells = (rows: readonly (readonly number[])[] | null) =>
    (rows ?? []).flat().map(plainDecimal);
  return {
    unit,
    texts: {
      name: stop.name,
      duty: stop.duty,
      ...readingTexts("freeHeight", stop.freeHeight, "length", unit),
      usableCompressionMm: numberText(stop.usableCompressionMm, "length", unit),
      outerDiameterMm: numberText(stop.outerDiameterMm, "length", unit),
      material: stop.material ?? "",
      mounting: stop.mounting ?? "",
      notes: stop.notes ?? "",
      testedAtSpeed: stop.testedAtSpeed ? "yes" : "no",
      ...partTexts(stop, unit),
      ...mountTexts(stop.mount, unit),
      estimatedHow: stop.estimated?.how ?? "",
      estimatedShare: stop.estimated ? plainDecimal(100 * stop.estimated.forceShare) : "",
    },
    tables: { curve: cells(stop.curve), damping: cells(stop.damping) },
  };
}

export const freeHeightName = {
  label: messages.freeHeight,
  within: messages.freeHeightWithin,
} as const;

/** The stop of a draft, or what is wrong with it. What the screen does not edit stays as it was. */
export function stopOfDraft(
  draft: ItemDraft,
  base: PackStop | null,
  id: string,
): { readonly stop: PackStop | null; readonly faults: readonly FieldFault[] } {
  const reader = new DraftReader(draft);
  const name = reader.neededText("name", messages.nameWord);
  const freeHeight = reader.needed(
    reader.reading("freeHeight", freeHeightName, "length"),
    "freeHeight",
    messages.freeHeight,
  );
  const usable = reader.needed(
    reader.number("usableCompressionMm", messages.usableCompression, "length"),
    "usableCompressionMm",
    messages.usableCompression,
  );
  const curve = reader.needed(
    reader.table("curve", messages.forceCurve, 2, curveKinds),
    "curve",
    messages.forceCurve,
  );
  const damping = reader.table("damping", messages.damping, 3, dampingKinds);
  const outerDiameterMm = reader.number("outerDiameterMm", messages.outerDiameter, "length");
  const how = reader.text("estimatedHow");
  const percent = reader.number("estimatedShare", messages.ofEstimate, "number", "zeroOrMore");
  if (how !== undefined && percent === undefined) {
    reader.fault("estimatedShare", messages.ofEstimateNothingIs);
  }
  const part = partOfDraft(reader, base);
  const mount = mountOfDraft(reader, draft, base?.mount);
  if (freeHeight === undefined || usable === undefined || curve === undefined) {
    return { stop: null, faults: reader.faults };
  }
  if (reader.faults.length > 0) return { stop: null, faults: reader.faults };
  const {
    material: _material,
    mounting: _mounting,
    mount: _mount,
    notes: _notes,
    outerDiameterMm: _diameter,
    estimated: _estimated,
    restLoss,
    staticShare,
    branches,
    testDoubt,
    ...kept
  } = base === null ? {} : withoutPart(base);
  const testedAtSpeed = draft.texts.testedAtSpeed === "yes";
  const material = reader.text("material");
  const mounting = reader.text("mounting");
  const notes = reader.text("notes");
  const dampingRows =
    damping?.map(([depth = 0, into = 0, out = 0]): DampingPoint => [depth, into, out]) ?? null;
  const asTested = JSON.stringify(dampingRows) === JSON.stringify(base?.damping ?? null);
  const stop: PackStop = {
    ...kept,
    id,
    name,
    duty: draft.texts.duty === "carry" ? "carry" : "impact",
    freeHeight,
    usableCompressionMm: usable,
    curve: curve.map(([depth = 0, force = 0]): CurvePoint => [depth, force]),
    damping: dampingRows,
    testedAtSpeed,
    // Only tests at speed show these: they go where it is said that there was none.
    ...(testedAtSpeed && restLoss !== undefined && { restLoss }),
    ...(testedAtSpeed && staticShare !== undefined && { staticShare }),
    ...(testedAtSpeed && branches !== undefined && { branches }),
    ...(testedAtSpeed && asTested && testDoubt !== undefined && { testDoubt }),
    ...(outerDiameterMm !== undefined && { outerDiameterMm }),
    ...(material !== undefined && { material }),
    ...part,
    ...(mounting !== undefined && { mounting }),
    ...(mount !== undefined && { mount }),
    ...(notes !== undefined && { notes }),
    ...(how !== undefined &&
      percent !== undefined && { estimated: { how, forceShare: percent / 100 } }),
  };
  return { stop, faults: [] };
}
