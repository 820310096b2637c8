import type { EntryKind } from "../../../records/entry/readingCatalogue.ts";
import type { Reach, ToolGroup, ToolId } from "../../../records/entry/tools.ts";
import { tapeClasses, tapeClassOf } from "../../../records/entry/toolTolerance.ts";
import { type EntryUnit, fromModel } from "../../../records/entry/units.ts";

export const toolWords: {
  readonly [Tool in ToolId]: { readonly name: string; readonly hint: string };
} = {
  tape: { name: "Tape, no class on it", hint: "Taken as class III" },
  tapeI: { name: "Tape, class I", hint: "A Roman I near its zero" },
  tapeII: { name: "Tape, class II", hint: "A Roman II near its zero" },
  tapeIII: { name: "Tape, class III", hint: "A Roman III near its zero" },
  rule: { name: "Steel rule", hint: "" },
  caliper: { name: "Caliper", hint: "" },
  feeler: { name: "Feeler gauge", hint: "Gaps up to 5 mm" },
  angleGauge: { name: "Digital angle gauge", hint: "" },
  phone: { name: "Phone laid along the line", hint: "" },
  level: { name: "Level or bubble inclinometer", hint: "" },
  protractor: { name: "Protractor", hint: "" },
  wheelScales: { name: "Wheel scales, level floor", hint: "" },
  wheelScale: { name: "Wheel scale with blocks", hint: "" },
  weighbridge: { name: "Public truck scale, halved", hint: "" },
};

/** What a tool's limit is taken from. */
export function limitSource(tool: ToolId): string {
  const tapeClass = tapeClassOf(tool);
  if (tapeClass !== null) {
    const { a, b, c } = tapeClasses[tapeClass];
    const taken = tool === "rule" ? ", as a class I measure (common practice)" : "";
    return `OIML R 35-1:2007, clause 4${taken}: ± (${a} + ${b}·L + ${c}) mm, L in meters rounded up, ${c} of it for its end or hook`;
  }
  return tool === "caliper" ? "DIN 862, vernier or dial, inside and depth" : "common practice";
}

export const reachWords: {
  readonly [Group in ToolGroup]: { readonly [Way in Reach]?: string };
} = {
  near: {
    clear: "Both ends in plain view",
    awkward: "At arm's length, around a corner",
    far: "By eye, or over a long way",
  },
  length: {
    clear: "Both ends in plain view",
    awkward: "At arm's length, around a corner",
    far: "By eye, or over a long way",
  },
  angle: {
    clear: "Laid along the line",
    awkward: "Held beside it",
    far: "By eye",
  },
  mass: {},
};

/** A share of a ± in the unit of the entry: two places, or whole kilograms. */
export function shareText(value: number, kind: EntryKind, unit: EntryUnit): string {
  if (kind === "angle") return `${Number(value.toFixed(2))}°`;
  const shown = fromModel(value, unit);
  const places = unit === "in" ? 3 : 2;
  return `${Number(shown.toFixed(places))} ${unit}`;
}

/** The ± as it stands beside a reading: typed as it was typed, otherwise in the entry's unit. */
export function toleranceText(
  tol: string,
  value: number,
  kind: EntryKind,
  unit: EntryUnit,
): string {
  if (tol.trim() === "") return `± ${shareText(value, kind, unit)}`;
  const unitless = /^[\d.,/\s-]+$/.test(tol);
  const suffix = kind === "angle" ? "°" : ` ${unit}`;
  return `± ${tol.trim()}${unitless ? suffix : ""}`;
}
