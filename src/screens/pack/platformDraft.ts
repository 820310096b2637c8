import type {
  GeometryReadingName,
  LayoutKind,
  LimitKind,
  Ride,
  RideQuantity,
} from "../../physics/fitment.ts";
import {
  geometryRegistry,
  layoutReadingsInOrder,
  layoutRegistry,
  limitPlaces,
  rideQuantities,
  type ValueName,
} from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import type { CheckLayout, CheckLimit, TypedReading } from "../../records/check/checkRecord.ts";
import { lackingGeometry } from "../../records/check/geometryGiven.ts";
import { platformReadings } from "../../records/check/recordFormat.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type Platform, platformReading } from "../../records/pack/pack.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import {
  DraftReader,
  type FieldFault,
  type FieldName,
  type ItemDraft,
  numberText,
  readingTexts,
} from "./itemDraft.ts";
import { mountOfDraft, mountTexts } from "./mountDraft.ts";

export function fieldLabel(name: ValueName): string {
  return capital(said(catalogueEntry(name).name));
}

export function fieldName(name: ValueName): FieldName {
  return { label: fieldLabel(name), within: said(catalogueEntry(name).name) };
}

/** The readings of a layout that stand for themselves, or those that others are made of. */
export function layoutNames(
  kind: LayoutKind,
  which: "direct" | "parts" | "all" = "direct",
): readonly GeometryReadingName[] {
  return layoutReadingsInOrder[kind].filter(
    (name) => which === "all" || (geometryRegistry[name].use === "part") === (which === "parts"),
  );
}

export function limitCount(draft: ItemDraft): number {
  return Number(draft.texts["limits.count"] ?? "0");
}

function limitTexts(limits: readonly CheckLimit[], unit: LengthUnit): { [field: string]: string } {
  const texts: { [field: string]: string } = { "limits.count": String(limits.length) };
  limits.forEach((limit, index) => {
    texts[`limits.${index}.kind`] = limit.kind;
    texts[`limits.${index}.at`] = limit.at;
    texts[`limits.${index}.perWheel`] = numberText(limit.perWheel, "number", unit);
    Object.assign(texts, readingTexts(`limits.${index}`, limit.reading, "length", unit));
    Object.assign(texts, readingTexts(`limits.${index}.distance`, limit.distance, "length", unit));
  });
  return texts;
}

/** Which arm was measured and what turns, where the layout says so. */
function saidTexts(layout: CheckLayout): { [field: string]: string } {
  return {
    armRole: "armRole" in layout ? (layout.armRole ?? "") : "",
    stopOn: "stopOn" in layout ? (layout.stopOn ?? "") : "",
  };
}

function toldTexts({ years, trims, tellApart }: Platform): { [field: string]: string } {
  return {
    "years.from": years === undefined ? "" : String(years.from),
    "years.to": years?.to === undefined ? "" : String(years.to),
    trims: (trims ?? []).join("; "),
    tellApart: tellApart ?? "",
  };
}

export function platformDraft(platform: Platform | null, unit: LengthUnit): ItemDraft {
  if (platform === null) {
    return { unit, texts: { axle: "front", layout: "arm", "limits.count": "0" }, tables: {} };
  }
  const { layout } = platform;
  const texts: { [field: string]: string } = {
    label: platform.label,
    axle: platform.axle,
    layout: layout.kind,
    ...saidTexts(layout),
    wheelPerOuter: numberText(layout.wheelPerOuter, "number", unit),
    wheelPerOuterTol: numberText(layout.wheelPerOuterTol, "number", unit),
    ...mountTexts(platform.mount, unit),
    ...toldTexts(platform),
    usualStop: platform.usualStop ?? "",
    notes: platform.notes ?? "",
    ...limitTexts(platform.limits, unit),
  };
  for (const name of layoutNames(layout.kind, "all")) {
    const reading = platformReading(platform, layout.kind, name) ?? undefined;
    Object.assign(texts, readingTexts(name, reading, catalogueEntry(name).kind, unit));
  }
  for (const name of platformReadings) {
    Object.assign(texts, readingTexts(name, platform[name], catalogueEntry(name).kind, unit));
  }
  for (const name of rideQuantities) {
    const { kind } = catalogueEntry(name);
    texts[`ride.${name}`] = numberText(platform.ride?.[name], kind, unit);
    texts[`ride.${name}.tol`] = numberText(platform.ride?.tolerances?.[name], kind, unit);
  }
  return { unit, texts, tables: {} };
}

/** The draft without one limit; those after it move down. */
export function withoutLimit(draft: ItemDraft, gone: number): ItemDraft {
  const texts: { [field: string]: string } = {};
  for (const [field, text] of Object.entries(draft.texts)) {
    const match = /^limits\.(\d+)(.*)$/.exec(field);
    const at = match === null ? -1 : Number(match[1]);
    if (at === gone) continue;
    texts[at > gone ? `limits.${at - 1}${match?.[2] ?? ""}` : field] = text;
  }
  texts["limits.count"] = String(Math.max(0, limitCount(draft) - 1));
  return { ...draft, texts };
}

export function withAnotherLimit(draft: ItemDraft): ItemDraft {
  const index = limitCount(draft);
  return {
    ...draft,
    texts: {
      ...draft.texts,
      "limits.count": String(index + 1),
      [`limits.${index}.kind`]: "tyre",
      [`limits.${index}.at`]: "wheel",
    },
  };
}

function limitsOf(reader: DraftReader, draft: ItemDraft): CheckLimit[] {
  const limits: CheckLimit[] = [];
  for (let index = 0; index < limitCount(draft); index += 1) {
    const field = `limits.${index}`;
    const label = messages.clearance2({ index: index + 1 });
    const within = messages.clearanceWithin({ index: index + 1 });
    const reading = reader.needed(reader.reading(field, { label, within }, "length"), field, label);
    const perWheel = reader.number(
      `${field}.perWheel`,
      messages.closingPerWheelTravel2({ label }),
      "number",
    );
    const distance = reader.reading(
      `${field}.distance`,
      {
        label: messages.distanceFromPivotLine({ label }),
        within: messages.distanceFromPivotLine({ label: within }),
      },
      "length",
    );
    if (reading === undefined) continue;
    limits.push({
      kind: (draft.texts[`${field}.kind`] ?? "other") as LimitKind,
      at: limitPlaces.find((at) => at === draft.texts[`${field}.at`]) ?? "wheel",
      ...(perWheel !== undefined && { perWheel }),
      ...(distance !== undefined && { distance }),
      reading,
    });
  }
  return limits;
}

function rideOf(reader: DraftReader, base: Ride | undefined): Ride | undefined {
  const values: { [Name in RideQuantity]?: number } = {};
  const tolerances: { [Name in RideQuantity]?: number } = {};
  for (const name of rideQuantities) {
    const { kind, allowed } = catalogueEntry(name);
    const label = fieldLabel(name);
    const value = reader.number(`ride.${name}`, label, kind, allowed);
    const tol = reader.number(`ride.${name}.tol`, messages.ofWord3({ label }), kind, "zeroOrMore");
    if (value !== undefined) values[name] = value;
    if (value !== undefined && tol !== undefined) tolerances[name] = tol;
  }
  if (Object.keys(values).length === 0) return undefined;
  const estimated = base?.estimated;
  return {
    ...values,
    ...(Object.keys(tolerances).length > 0 && { tolerances }),
    ...(estimated !== undefined && { estimated }),
  };
}

/** What the screen does not edit of a layout that stays the same. */
function keptLayout(base: Platform | null, kind: LayoutKind): object {
  if (base?.layout.kind !== kind) return {};
  const { wheelPerOuter: _, wheelPerOuterTol: _tol, ...kept } = base.layout;
  const {
    armRole: _role,
    stopOn: _on,
    ...rest
  } = kept as typeof kept & {
    armRole?: string;
    stopOn?: string;
  };
  return rest;
}

const yearsPossible = [1900, 2200] as const;

function yearOf(reader: DraftReader, field: string, label: string): number | undefined {
  const year = reader.number(field, label, "number");
  const [least, most] = yearsPossible;
  if (year === undefined || (Number.isInteger(year) && year >= least && year <= most)) return year;
  reader.fault(field, messages.wholeYearFromTo({ label, least, most }));
  return undefined;
}

/** How it is told from other vehicles. */
function toldOf(reader: DraftReader): Pick<Platform, "years" | "trims" | "tellApart"> {
  const from = yearOf(reader, "years.from", messages.firstYear);
  const to = yearOf(reader, "years.to", messages.lastYear);
  if (from === undefined && to !== undefined && reader.text("years.from") === undefined) {
    reader.fault("years.from", messages.firstYearLastYear);
  }
  if (from !== undefined && to !== undefined && to < from) {
    reader.fault("years.to", messages.lastYearItLies);
  }
  const trims = (reader.text("trims") ?? "")
    .split(";")
    .map((trim) => trim.trim())
    .filter((trim) => trim !== "");
  const tellApart = reader.text("tellApart");
  return {
    ...(from !== undefined && { years: { from, ...(to !== undefined && { to }) } }),
    ...(trims.length > 0 && { trims }),
    ...(tellApart !== undefined && { tellApart }),
  };
}

/** A length may stand for itself or be made of bolt distances and heights; one of the two is needed. */
function readingsOf(
  reader: DraftReader,
  kind: LayoutKind,
): { [Name in GeometryReadingName]?: TypedReading } {
  const readings: { [Name in GeometryReadingName]?: TypedReading } = {};
  for (const name of layoutNames(kind, "all")) {
    const { kind: quantity, allowed } = catalogueEntry(name);
    const reading = reader.reading(name, fieldName(name), quantity, allowed);
    if (reading !== undefined) readings[name] = reading;
  }
  for (const name of lackingGeometry({ layout: { kind, readings }, corners: [] })) {
    const { madeOf } = geometryRegistry[name];
    const parts = madeOf === undefined ? [] : [...madeOf.common, ...madeOf.own];
    if (reader.faults.some(({ field }) => [name, ...parts].some((each) => field === each)))
      continue;
    reader.fault(
      name,
      parts.length === 0
        ? messages.nothingIsEnteredYet2({ fieldLabel: fieldLabel(name) })
        : messages.nothingIsEnteredYetNeither({ fieldLabel: fieldLabel(name) }),
    );
  }
  return readings;
}

/** Which arm it is and what turns, as chosen. */
function saidOf(draft: ItemDraft, kind: LayoutKind): object {
  const role = draft.texts.armRole ?? "";
  const on = draft.texts.stopOn ?? "";
  const { onArm, saysStopOn } = layoutRegistry[kind];
  return {
    ...(onArm && role !== "" && { armRole: role }),
    ...(saysStopOn && on !== "" && { stopOn: on }),
  };
}

/** The platform of a draft, or what is wrong with it. What the screen does not edit stays as it was. */
export function platformOfDraft(
  draft: ItemDraft,
  base: Platform | null,
  id: string,
): { readonly platform: Platform | null; readonly faults: readonly FieldFault[] } {
  const reader = new DraftReader(draft);
  const label = reader.neededText("label", messages.nameWord);
  const kind = (draft.texts.layout ?? "arm") as LayoutKind;
  const readings = readingsOf(reader, kind);
  const wheelPerOuter = reader.number("wheelPerOuter", fieldLabel("wheelPerOuter"), "number");
  const wheelPerOuterTol = reader.number(
    "wheelPerOuterTol",
    fieldLabel("wheelPerOuterTol"),
    "number",
    "zeroOrMore",
  );
  const told = toldOf(reader);
  const mount = mountOfDraft(reader, draft, base?.mount);
  const corner: { [Name in (typeof platformReadings)[number]]?: TypedReading } = {};
  for (const name of platformReadings) {
    const reading = reader.reading(name, fieldName(name), catalogueEntry(name).kind);
    if (reading !== undefined) corner[name] = reading;
  }
  const limits = limitsOf(reader, draft);
  const ride = rideOf(reader, base?.ride);
  if (reader.faults.length > 0) return { platform: null, faults: reader.faults };
  const {
    rideHeight: _height,
    gap: _gap,
    cornerMassKg: _mass,
    ride: _ride,
    notes: _notes,
    mount: _mount,
    years: _years,
    trims: _trims,
    tellApart: _tell,
    ...kept
  } = base ?? {};
  const notes = reader.text("notes");
  return {
    platform: {
      ...kept,
      id,
      label,
      axle: draft.texts.axle === "rear" ? "rear" : "front",
      layout: {
        ...keptLayout(base, kind),
        kind,
        ...saidOf(draft, kind),
        ...(wheelPerOuter !== undefined && { wheelPerOuter }),
        ...(wheelPerOuterTol !== undefined && { wheelPerOuterTol }),
        readings,
      } as CheckLayout,
      ...corner,
      ...(ride !== undefined && { ride }),
      limits,
      usualStop: reader.text("usualStop") ?? null,
      ...(mount !== undefined && { mount }),
      ...told,
      ...(notes !== undefined && { notes }),
    },
    faults: [],
  };
}
