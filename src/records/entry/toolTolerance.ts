import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { Reach, ToolGroup, ToolId } from "./tools.ts";
import { type EntryUnit, mmPerInch } from "./units.ts";

export type TapeClass = "I" | "II" | "III";

/** What ±(a + b·L), and c more from an end, is made of, mm; see `tapeLimit`. */
export const tapeClasses: {
  readonly [Class in TapeClass]: {
    readonly a: number;
    readonly b: number;
    readonly c: number;
  };
} = {
  I: { a: 0.1, b: 0.1, c: 0.1 },
  II: { a: 0.3, b: 0.2, c: 0.2 },
  III: { a: 0.6, b: 0.4, c: 0.3 },
};

/** Lengths beyond this are no reading on a vehicle, mm. */
const longestMm = 100_000;

/**
 * Maximum permissible error of a material measure of length, ± mm.
 *
 * ±(a + b·L) mm with L in metres, rounded up to the next whole metre; c more where one of the two
 * ends is a surface (the hook or the butt end of a tape) and not a mark.
 *
 * @param lengthMm the length measured, mm, above 0 and up to 100 m
 * @source OIML R 35-1:2007 (E), clause 4, accuracy classes and maximum permissible errors; the same
 * a, b, c as in Directive 2014/32/EU, Annex X (MI-008). The formula and the table of a, b and c were
 * read in a secondary source, the clause in the table of contents of R 35-1.
 */
export function tapeLimit(
  tapeClass: TapeClass,
  lengthMm: number,
  { fromItsEnd = false }: { readonly fromItsEnd?: boolean } = {},
): Outcome<number> {
  if (!(lengthMm > 0 && lengthMm <= longestMm)) {
    return fail("toolRange", [messages.errorOfTapeIs]);
  }
  const { a, b, c } = tapeClasses[tapeClass];
  const metres = Math.max(1, Math.ceil(Number((lengthMm / 1000).toFixed(9))));
  return succeed(a + b * metres + (fromItsEnd ? c : 0));
}

/**
 * Maximum permissible error of a vernier or dial caliper with 0.05 mm steps, ± mm: 0.05 to 300 mm,
 * 0.01 more for each further 100 mm begun, and 0.02 more for inside and depth measurements, which
 * are the ones that a gap needs.
 *
 * @param lengthMm the length measured, mm, above 0 and up to 1000
 * @source DIN 862, table of limits of error, read in a secondary table
 */
export function caliperLimit(lengthMm: number): Outcome<number> {
  if (!(lengthMm > 0 && lengthMm <= 1000)) {
    return fail("toolRange", [messages.caliperDoesNotReach]);
  }
  const further = Math.max(0, Math.ceil((lengthMm - 300) / 100));
  return succeed(0.05 + 0.01 * further + 0.02);
}

/** Leaves are made to some hundredths of a millimetre; common practice, no source. */
const feelerLimit = 0.02;
const longestFeelerMm = 5;

/** Of what a workshop's own angle tools and scales can be off: common practice, no source. */
const fixedLimits: { readonly [Tool in ToolId]?: number } = {
  angleGauge: 0.2,
  level: 0.5,
  phone: 0.5,
  protractor: 2,
  wheelScales: 2,
  wheelScale: 10,
  weighbridge: 30,
};

/**
 * The class of OIML R 35 that a tool is taken as; null where it is no measure of that kind. Common
 * practice: a tape without a mark is the least of them, a workshop's steel rule the best.
 */
export function tapeClassOf(tool: ToolId): TapeClass | null {
  switch (tool) {
    case "tapeI":
    case "rule":
      return "I";
    case "tapeII":
      return "II";
    case "tape":
    case "tapeIII":
      return "III";
    default:
      return null;
  }
}

/** The tool's own limit of error, ± in the model's unit (mm, degrees, kg), at this value. */
function limitOf(tool: ToolId, value: number): Outcome<number> {
  const tapeClass = tapeClassOf(tool);
  if (tapeClass !== null) return tapeLimit(tapeClass, value, { fromItsEnd: true });
  switch (tool) {
    case "caliper":
      return caliperLimit(value);
    case "feeler":
      return value > 0 && value <= longestFeelerMm
        ? succeed(feelerLimit)
        : fail("toolRange", [messages.feelerGaugeIsFor]);
    default:
      return succeed(fixedLimits[tool] ?? 0);
  }
}

/** The finest fraction of an inch among what was typed: a tape is read to the marks it has. */
function finestDenominator(texts: readonly string[]): number {
  const found = texts.map((text) => Number(/\/\s?(\d{1,3})\D*$/.exec(text)?.[1] ?? 0));
  return Math.max(0, ...found);
}

/**
 * The step that a tool is read to, in the model's unit. Common practice: a tape has millimetres, or
 * sixteenths of an inch (thirty-seconds or sixty-fourths where such a fraction was typed), a steel
 * rule millimetres or thirty-seconds.
 */
export function graduationOf(tool: ToolId, unit: EntryUnit, texts: readonly string[] = []): number {
  const inches = (usual: number) =>
    mmPerInch / Math.min(64, Math.max(usual, finestDenominator(texts)));
  switch (tool) {
    case "tape":
    case "tapeI":
    case "tapeII":
    case "tapeIII":
      return unit === "in" ? inches(16) : 1;
    case "rule":
      return unit === "in" ? inches(32) : 1;
    case "caliper":
    case "feeler":
      return 0.05;
    case "angleGauge":
    case "phone":
      return 0.1;
    case "level":
      return 0.5;
    case "protractor":
    case "wheelScales":
    case "wheelScale":
      return 1;
    case "weighbridge":
      return 20;
  }
}

const placing: {
  readonly [Kind in "length" | "angle"]: { readonly [Way in Reach]: number };
} = {
  length: { clear: 0, awkward: 2, far: 5 },
  angle: { clear: 0, awkward: 1, far: 3 },
};

/**
 * How far off the tool's ends may be placed, ± mm or degrees. Common practice, no source: nothing
 * beyond the graduation where both ends are in plain view, 2 mm or 1° at arm's length around a
 * corner, 5 mm or 3° across the vehicle or by eye.
 */
function placingOf(kind: "length" | "angle" | "mass", reach: Reach): number {
  return kind === "mass" ? 0 : placing[kind][reach];
}

export interface ToolShares {
  /** The tool's own limit of error. */
  readonly limit: number;
  /** Half of the step that it is read to. */
  readonly reading: number;
  /** How well its ends can be placed. */
  readonly placing: number;
  /** All three together. */
  readonly halfWidth: number;
}

/**
 * The ± of a reading from the tool it was taken with: the half-width of a rectangular distribution
 * that has the variance of three independent rectangular ones, the tool's limit of error, half of
 * its graduation, and the placing of its ends: √(limit² + (graduation/2)² + placing²), rounded up to
 * a hundredth.
 *
 * @param value the mean of the reading, model's unit (mm, degrees, kg)
 * @source JCGM 100:2008, 4.3.7 (a bound as a rectangular distribution), F.2.2.1 (resolution as one of
 * half-width δx/2), 5.1.2 (variances of independent inputs add); that the placing of the ends is the
 * third input is common practice
 */
export function toolTolerance({
  tool,
  reach,
  kind,
  value,
  unit,
  texts = [],
}: {
  readonly tool: ToolId;
  readonly reach: Reach;
  readonly kind: "length" | "angle" | "mass";
  readonly value: number;
  readonly unit: EntryUnit;
  readonly texts?: readonly string[];
}): Outcome<ToolShares> {
  const limit = limitOf(tool, value);
  if (!limit.ok) return limit;
  const reading = graduationOf(tool, unit, texts) / 2;
  const placed = placingOf(kind, reach);
  const exact = Math.hypot(limit.value, reading, placed);
  const halfWidth = Math.ceil(Number((100 * exact).toFixed(6))) / 100;
  return succeed({ limit: limit.value, reading, placing: placed, halfWidth });
}

const toolsByKind: { readonly [kind: string]: readonly ToolId[] } = {
  near: ["tape", "tapeI", "tapeII", "tapeIII", "rule", "caliper", "feeler"],
  length: ["tape", "tapeI", "tapeII", "tapeIII", "rule", "caliper"],
  angle: ["angleGauge", "phone", "level", "protractor"],
  mass: ["wheelScales", "wheelScale", "weighbridge"],
};

export function toolsOf(group: ToolGroup): readonly ToolId[] {
  return toolsByKind[group] ?? [];
}
