import { entryText, parseText } from "../../../records/entry.ts";
import type { EntryKind } from "../../../records/readingCatalogue.ts";
import type { EntryUnit } from "../../../records/units.ts";

export interface ToleranceChoice {
  /** As it stands in the entry: with its own unit, so that it holds when the entry's unit changes. */
  readonly tol: string;
  readonly tool: string;
}

const metricLengths: readonly ToleranceChoice[] = [
  { tol: "0.5 mm", tool: "Caliper or steel rule" },
  { tol: "1 mm", tool: "Tape, easy to reach" },
  { tol: "2 mm", tool: "Tape, hard to reach" },
  { tol: "5 mm", tool: "By eye, or over a long way" },
];

const inchLengths: readonly ToleranceChoice[] = [
  { tol: "1/64 in", tool: "Caliper or steel rule" },
  { tol: "1/32 in", tool: "Tape, easy to reach" },
  { tol: "1/16 in", tool: "Tape, hard to reach" },
  { tol: "1/4 in", tool: "By eye, or over a long way" },
];

const angles: readonly ToleranceChoice[] = [
  { tol: "0.2", tool: "Digital angle gauge" },
  { tol: "0.5", tool: "Phone laid along the line" },
  { tol: "1", tool: "Phone or gauge, hard to place" },
  { tol: "3", tool: "By eye" },
];

const kilograms: readonly ToleranceChoice[] = [
  { tol: "2 kg", tool: "Wheel scales, level floor" },
  { tol: "10 kg", tool: "Wheel scale with blocks" },
  { tol: "30 kg", tool: "Public weighbridge, halved" },
];

const pounds: readonly ToleranceChoice[] = [
  { tol: "5 lb", tool: "Wheel scales, level floor" },
  { tol: "20 lb", tool: "Wheel scale with blocks" },
  { tol: "70 lb", tool: "Public weighbridge, halved" },
];

export function toleranceChoices(kind: EntryKind, unit: EntryUnit): readonly ToleranceChoice[] {
  switch (kind) {
    case "length":
      return unit === "in" ? inchLengths : metricLengths;
    case "angle":
      return angles;
    case "mass":
      return unit === "lb" ? pounds : kilograms;
    default:
      return [];
  }
}

/** The ± in the model's unit, or null where it can't be read. An empty text is the usual ±. */
export function toleranceValue(
  tol: string,
  kind: EntryKind,
  unit: EntryUnit,
  usual: number,
): number | null {
  if (tol.trim() === "") return usual;
  const parsed = parseText(tol, kind, unit, "zeroOrMore");
  return parsed.ok ? parsed.value.value : null;
}

/** The ± as it is shown behind the word "Tool". */
export function toleranceText(
  tol: string,
  kind: EntryKind,
  unit: EntryUnit,
  usual: number,
): string {
  const value = toleranceValue(tol, kind, unit, usual);
  if (value === null) return `± ${tol} ?`;
  const own =
    tol.trim() === "" ? entryText(usual, kind, kind === "length" ? "mm" : unit) : tol.trim();
  const unitless = /^[\d.,/\s-]+$/.test(own);
  const suffix =
    kind === "angle" ? "°" : ` ${tol.trim() === "" && kind === "length" ? "mm" : unit}`;
  return `± ${own}${unitless ? suffix : ""}`;
}
