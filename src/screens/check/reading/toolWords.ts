import type { EntryKind } from "../../../records/entry/readingCatalogue.ts";
import type { Reach, ToolGroup, ToolId } from "../../../records/entry/tools.ts";
import { tapeClasses, tapeClassOf } from "../../../records/entry/toolTolerance.ts";
import { type EntryUnit, fromModel } from "../../../records/entry/units.ts";
import { noBreak } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";

export const toolWords: {
  readonly [Tool in ToolId]: { readonly name: string; readonly hint: string };
} = {
  tape: { name: messages.tapeNoClassOn, hint: messages.takenAsClassIii },
  tapeI: { name: messages.tapeClassI, hint: messages.romanINearIts },
  tapeII: { name: messages.tapeClassIi, hint: messages.romanIiNearIts },
  tapeIII: { name: messages.tapeClassIii, hint: messages.romanIiiNearIts },
  rule: { name: messages.steelRule, hint: "" },
  caliper: { name: messages.caliper, hint: "" },
  feeler: { name: messages.feelerGauge, hint: messages.gapsUpTo5 },
  angleGauge: { name: messages.digitalAngleGauge, hint: "" },
  phone: { name: messages.phoneLaidAlongLine, hint: "" },
  level: { name: messages.levelOrBubbleInclinometer, hint: "" },
  protractor: { name: messages.protractor, hint: "" },
  wheelScales: { name: messages.wheelScalesLevelFloor, hint: "" },
  wheelScale: { name: messages.wheelScaleWithBlocks, hint: "" },
  weighbridge: { name: messages.publicTruckScaleHalved, hint: "" },
};

/** What a tool's limit is taken from. */
export function limitSource(tool: ToolId): string {
  const tapeClass = tapeClassOf(tool);
  if (tapeClass !== null) {
    const { a, b, c } = tapeClasses[tapeClass];
    const taken = tool === "rule" ? messages.asClassIMeasure : "";
    return messages.oimlR351({ taken, a, b, c });
  }
  return tool === "caliper" ? messages.din862VernierOr : messages.commonPractice;
}

export const reachWords: {
  readonly [Group in ToolGroup]: { readonly [Way in Reach]?: string };
} = {
  near: {
    clear: messages.bothEndsInPlain,
    awkward: messages.atArmsLengthAround,
    far: messages.byEyeOrOver,
  },
  length: {
    clear: messages.bothEndsInPlain,
    awkward: messages.atArmsLengthAround,
    far: messages.byEyeOrOver,
  },
  angle: {
    clear: messages.laidAlongLine,
    awkward: messages.heldBesideIt,
    far: messages.byEye,
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

function twoFigures(value: number, kind: EntryKind, unit: EntryUnit): string {
  const shown = Number(fromModel(value, unit).toPrecision(2));
  return kind === "angle" ? `${shown}°` : `${shown}${noBreak}${unit}`;
}

/** The ± as it stands beside a reading: typed as it was typed, otherwise two figures in the entry's unit. */
export function toleranceText(
  tol: string,
  value: number,
  kind: EntryKind,
  unit: EntryUnit,
): string {
  if (tol.trim() === "") return `±${noBreak}${twoFigures(value, kind, unit)}`;
  const unitless = /^[\d.,/\s-]+$/.test(tol);
  const suffix = kind === "angle" ? "°" : `${noBreak}${unit}`;
  return `±${noBreak}${tol.trim()}${unitless ? suffix : ""}`;
}
