import type { LimitKind } from "../../physics/fitment.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { TypedReading } from "../check/checkRecord.ts";
import { recordBounds } from "../check/recordFormat.ts";
import {
  type AllowedSign,
  type ParsedEntry,
  parseAngle,
  parseContactRate,
  parseDamping,
  parseForce,
  parseLength,
  parseMass,
  parseNumber,
  parseRate,
  parseRoadSpeed,
} from "./lengthEntry.ts";
import { catalogueEntry, type EntryKind } from "./readingCatalogue.ts";
import { entryToolShares, toolFields } from "./readingTools.ts";
import {
  type EntryUnit,
  fromModel,
  type LengthUnit,
  plainDecimal,
  type TypedUnit,
  toModel,
} from "./units.ts";

/** One thing being typed: the raw text of each repeat, even unreadable, its unit and its ±. */
export interface Entry {
  readonly texts: readonly string[];
  readonly unit: EntryUnit;
  /** The ± as typed; empty where it comes from the tool, or is the usual one. */
  readonly tol: string;
  /** What it is measured with, and how well that gets at it: ToolId and Reach, as far as known. */
  readonly tool?: string;
  readonly reach?: string;
  /** Who typed it. */
  readonly by?: string;
}

/** What an entry is stored under: a reading's id, or the key of a choice, a tick or what an estimate is made from. */
export type EntryKey = string;

/** One text of an entry in the model's unit. */
export function parseText(
  text: string,
  kind: EntryKind,
  unit: EntryUnit,
  allowed: AllowedSign,
): Outcome<ParsedEntry<TypedUnit>> {
  const imperial = unit === "in" || unit === "lb" || unit.startsWith("lbf");
  switch (kind) {
    case "length": {
      const parsed = parseLength(text, imperial ? "in" : "mm", allowed);
      if (!parsed.ok) return parsed;
      const { mm, typed, unit: lengthUnit } = parsed.value;
      return succeed({ value: mm, unit: lengthUnit, typed });
    }
    case "angle":
      return parseAngle(text);
    case "mass":
      return parseMass(text, imperial ? "lb" : "kg", allowed);
    case "rate":
      return parseRate(text, imperial ? "lbf/in" : "N/mm", allowed);
    case "damping":
      return parseDamping(text, imperial ? "lbf·s/in" : "N·s/mm", allowed);
    case "force":
      return parseForce(text, imperial ? "lbf" : "N", allowed);
    case "roadSpeed":
      return parseRoadSpeed(text, unit === "mph" ? "mph" : "km/h", allowed);
    case "contactRate":
      return parseContactRate(text, unit === "per mile" ? "per mile" : "per km", allowed);
    case "number": {
      const parsed = parseNumber(text, allowed);
      if (!parsed.ok) return parsed;
      return succeed({ value: parsed.value, unit: "", typed: text.trim() });
    }
  }
}

/**
 * The ± of an entry in the model's unit. An empty text is the ± of the tool at the mean of `values`;
 * where no tool is known, or it does not reach that far, the catalogue's own.
 */
export function readTolerance(
  id: ReadingId,
  entry: Entry,
  values: readonly number[] = [],
): Outcome<number> {
  const { kind, usualTolerance } = catalogueEntry(id);
  if (entry.tol.trim() === "") {
    const shares = entryToolShares(id, entry, values);
    return succeed(shares?.ok ? shares.value.halfWidth : usualTolerance);
  }
  const parsed = parseText(entry.tol, kind, entry.unit, "zeroOrMore");
  if (!parsed.ok) {
    return fail(parsed.fault.code, [messages.the({ sentence: parsed.fault.sentence })], id);
  }
  if (parsed.value.value < 0) return fail("toleranceNegative", [messages.cannotBeBelow0], id);
  return succeed(parsed.value.value);
}

/**
 * A reading from its entry. Blank repeats are left out; one unreadable repeat makes the whole entry
 * unreadable, so that a mean is never taken over part of what was typed.
 */
export function readEntry(id: ReadingId, entry: Entry): Outcome<TypedReading> {
  const { kind, allowed } = catalogueEntry(id);
  const values: number[] = [];
  const typed: string[] = [];
  for (const text of entry.texts) {
    if (text.trim() === "") continue;
    const parsed = parseText(text, kind, entry.unit, allowed);
    if (!parsed.ok) return fail(parsed.fault.code, parsed.fault.sentence, id);
    values.push(parsed.value.value);
    typed.push(parsed.value.typed);
  }
  if (values.length === 0) return fail("entryEmpty", [messages.nothingIsEnteredYet], id);
  const tol = readTolerance(id, entry, values);
  if (!tol.ok) return tol;
  const fits = typed.every((text) => text.length <= recordBounds.typedCharacters);
  return succeed({
    values,
    tol: tol.value,
    ...(fits && { typed }),
    ...toolFields(entry),
  });
}

/** A plain number (ride data, lift, ratio) from its entry. */
export function readNumber(id: ReadingId, entry: Entry): Outcome<number> {
  const { kind, allowed } = catalogueEntry(id);
  const parsed = parseText(entry.texts[0] ?? "", kind, entry.unit, allowed);
  return parsed.ok
    ? succeed(parsed.value.value)
    : fail(parsed.fault.code, parsed.fault.sentence, id);
}

/** A table typed cell by cell, row after row: column 0 in mm or inches, the others of `kind`. */
export function readTable(
  id: ReadingId,
  entry: Entry,
  columns: 2 | 3,
): Outcome<readonly (readonly number[])[]> {
  const { kind, allowed } = catalogueEntry(id);
  const rows: number[][] = [];
  for (let start = 0; start < entry.texts.length; start += columns) {
    const cells = entry.texts.slice(start, start + columns);
    if (cells.every((cell) => cell.trim() === "")) continue;
    const row: number[] = [];
    for (let column = 0; column < columns; column += 1) {
      const text = cells[column] ?? "";
      const parsed =
        column === 0
          ? parseText(text, "length", entry.unit, "zeroOrMore")
          : parseText(text, kind, entry.unit, allowed);
      if (!parsed.ok) {
        const where = messages.rowColumn({ start: start / columns + 1, column: column + 1 });
        return fail(parsed.fault.code, [where, ...parsed.fault.sentence], id);
      }
      row.push(parsed.value.value);
    }
    rows.push(row);
  }
  if (rows.length === 0) return fail("entryEmpty", [messages.nothingIsEnteredYet], id);
  return succeed(rows);
}

/** True where a model value is a short number in `unit`, needing no other unit behind it. */
export function isShortIn(value: number, unit: EntryUnit): boolean {
  return exactText(value, unit) !== null;
}

/** A model value as a text that reads back as exactly the same value in `unit`, or null. */
function exactText(value: number, unit: EntryUnit): string | null {
  const shown = fromModel(value, unit);
  for (const candidate of [Number(shown.toPrecision(6)), shown]) {
    const text = plainDecimal(candidate);
    if (text.length <= 12 && toModel(Number(text), unit) === value) return text;
  }
  return null;
}

/**
 * A model value written for editing in `unit`, reading back as exactly the same value: where no
 * short text in that unit does, the model's own unit is written behind it ("1.5 mm").
 */
export function entryText(value: number, kind: EntryKind, unit: EntryUnit): string {
  const exact = exactText(value, unit);
  if (exact !== null) return exact;
  const modelUnits: { readonly [Kind in EntryKind]: string } = {
    length: "mm",
    angle: "°",
    mass: "kg",
    rate: "N/mm",
    damping: "N·s/mm",
    force: "N",
    roadSpeed: "km/h",
    contactRate: "per km",
    number: "",
  };
  return `${plainDecimal(value)} ${modelUnits[kind]}`.trim();
}

const suffixUnits: readonly (readonly [RegExp, EntryUnit])[] = [
  [/\s*(?:mm)$/, "mm"],
  [/\s*(?:in|in\.|inch|inches|"|″|”)$/, "in"],
  [/\s*kgs?$/, "kg"],
  [/\s*lbs?\.?$/, "lb"],
  [/\s*(?:°|deg)$/, "deg"],
];

function splitSuffix(typed: string): { body: string; unit: EntryUnit } | null {
  for (const [pattern, unit] of suffixUnits) {
    if (pattern.test(typed)) return { body: typed.replace(pattern, ""), unit };
  }
  return null;
}

/**
 * The entry that a reading of a record is changed in later: what was typed, in the unit it was typed
 * in, as far as that agrees with the record's numbers; the numbers themselves where it does not.
 */
export function entryOfReading(
  id: ReadingId,
  reading: TypedReading,
  preferred: EntryUnit,
  limitKind?: LimitKind,
): Entry {
  const { kind, allowed } = catalogueEntry(id, limitKind);
  const texts = reading.values.map((value, index) => {
    const typed = reading.typed?.[index];
    const parsed = typed === undefined ? null : parseText(typed, kind, preferred, allowed);
    return typed !== undefined && parsed?.ok === true && isNear(parsed.value.value, value)
      ? typed
      : entryText(value, kind, preferred);
  });
  const parts = texts.map((text) => splitSuffix(text) ?? { body: text, unit: preferred });
  const unit = parts[0]?.unit ?? preferred;
  if (parts.some((part) => part.unit !== unit)) {
    // Repeats in different units keep their own unit behind the number.
    return { texts, unit: preferred, ...toleranceOfReading(id, reading, texts, preferred) };
  }
  const bodies = parts.map(({ body }) => body);
  return { texts: bodies, unit, ...toleranceOfReading(id, reading, bodies, unit) };
}

/** The ± beside texts in `unit`: none where it is the one that the tool gives. */
function toleranceOfReading(
  id: ReadingId,
  reading: TypedReading,
  texts: readonly string[],
  unit: EntryUnit,
): Pick<Entry, "tol" | "tool" | "reach" | "by"> {
  const tool = toolFields(reading);
  const entry: Entry = { texts, unit, tol: "", ...tool };
  const shares = entryToolShares(id, entry, reading.values);
  const fromTool = shares?.ok === true && isNear(shares.value.halfWidth, reading.tol);
  return { tol: fromTool ? "" : entryText(reading.tol, catalogueEntry(id).kind, unit), ...tool };
}

function isNear(first: number, second: number): boolean {
  return Math.abs(first - second) <= 1e-9 * Math.max(1, Math.abs(second));
}

/** The unit a person changes a reading in: that of what was typed first, or the person's own. */
export function entryLengthUnit(entry: Entry): LengthUnit {
  return entry.unit === "in" || entry.unit === "lb" || entry.unit.startsWith("lbf") ? "in" : "mm";
}
