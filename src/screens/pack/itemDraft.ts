import type { Outcome } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { TypedReading } from "../../records/check/checkRecord.ts";
import { entryText, parseText } from "../../records/entry/entry.ts";
import type { AllowedSign } from "../../records/entry/lengthEntry.ts";
import { type EntryKind, entryUnit } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { isPlainObject } from "../../records/text/plainObject.ts";
import * as messages from "../../words/compiled/screens/pack.ts";

/** A stop, a platform or the rules while they are edited: every field as typed, even unreadable. */
export interface ItemDraft {
  /** What numbers without a unit of their own are in. */
  readonly unit: LengthUnit;
  readonly texts: { readonly [field: string]: string };
  /** Cells of tables, row after row; in mm and N, N·s/mm unless `tableUnitField` says inches. */
  readonly tables: { readonly [field: string]: readonly string[] };
}

export interface FieldFault {
  readonly field: string;
  readonly sentence: Sentence;
}

export function setText(draft: ItemDraft, field: string, text: string): ItemDraft {
  return { ...draft, texts: { ...draft.texts, [field]: text } };
}

export function setTable(draft: ItemDraft, field: string, cells: readonly string[]): ItemDraft {
  return { ...draft, tables: { ...draft.tables, [field]: cells } };
}

/** What a field is called, alone and within a sentence. */
export interface FieldName {
  readonly label: string;
  readonly within: string;
}

/** Beside the other texts: what the numbers of a table are in. */
export function tableUnitField(field: string): string {
  return `${field}.unit`;
}

export function tableUnit(draft: ItemDraft, field: string): LengthUnit {
  return draft.texts[tableUnitField(field)] === "in" ? "in" : "mm";
}

export function textOf(draft: ItemDraft, field: string): string {
  return draft.texts[field] ?? "";
}

/** A number as a text to edit; empty where there is none. */
export function numberText(value: number | undefined, kind: EntryKind, unit: LengthUnit): string {
  return value === undefined ? "" : entryText(value, kind, entryUnit(kind, unit));
}

/** A reading as texts to edit: repeats apart by semicolons, and its ±. */
export function readingTexts(
  field: string,
  reading: TypedReading | undefined,
  kind: EntryKind,
  unit: LengthUnit,
): { [field: string]: string } {
  if (reading === undefined) return {};
  return {
    [field]: reading.values.map((value) => numberText(value, kind, unit)).join("; "),
    [`${field}.tol`]: numberText(reading.tol, kind, unit),
  };
}

/** One number of a field, alone. */
export function readDraftNumber(
  text: string,
  kind: EntryKind,
  unit: LengthUnit,
  allowed: AllowedSign,
): Outcome<number> {
  const parsed = parseText(text, kind, entryUnit(kind, unit), allowed);
  return parsed.ok ? { ok: true, value: parsed.value.value } : parsed;
}

/** Reads a draft field by field and gathers what can't be read. */
export class DraftReader {
  readonly faults: FieldFault[] = [];

  constructor(private readonly draft: ItemDraft) {}

  fault(field: string, ...sentence: Sentence): void {
    this.faults.push({ field, sentence });
  }

  text(field: string): string | undefined {
    const text = textOf(this.draft, field).trim();
    return text === "" ? undefined : text;
  }

  neededText(field: string, label: string): string {
    const text = this.text(field);
    if (text === undefined) this.fault(field, messages.nothingIsEnteredYet({ label }));
    return text ?? "";
  }

  number(
    field: string,
    label: string,
    kind: EntryKind,
    allowed: AllowedSign = "aboveZero",
  ): number | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    const read = readDraftNumber(text, kind, this.draft.unit, allowed);
    if (read.ok) return read.value;
    this.fault(field, messages.inField({ label }), ...read.fault.sentence);
    return undefined;
  }

  /** Numbers apart by semicolons. */
  list(field: string, label: string, kind: EntryKind): readonly number[] | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    const values: number[] = [];
    for (const part of text.split(";")) {
      if (part.trim() === "") continue;
      const read = readDraftNumber(part, kind, this.draft.unit, "aboveZero");
      if (!read.ok) {
        this.fault(field, messages.inField({ label }), ...read.fault.sentence);
        return undefined;
      }
      values.push(read.value);
    }
    return values.length === 0 ? undefined : values;
  }

  reading(
    field: string,
    { label, within }: FieldName,
    kind: EntryKind,
    allowed: AllowedSign = "aboveZero",
  ): TypedReading | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    const values: number[] = [];
    for (const part of text.split(";")) {
      if (part.trim() === "") continue;
      const read = readDraftNumber(part, kind, this.draft.unit, allowed);
      if (!read.ok) {
        this.fault(field, messages.inField({ label }), ...read.fault.sentence);
        return undefined;
      }
      values.push(read.value);
    }
    const tol = this.number(
      `${field}.tol`,
      messages.ofWord4({ label: within }),
      kind,
      "zeroOrMore",
    );
    return values.length === 0 ? undefined : { values, tol: tol ?? 0 };
  }

  needed<Value>(value: Value | undefined, field: string, label: string): Value | undefined {
    const told = this.faults.some((fault) => fault.field === field);
    if (value === undefined && !told) this.fault(field, messages.nothingIsEnteredYet({ label }));
    return value;
  }

  /** Rows of numbers in model units; plain numbers where the columns are of no `kinds`. */
  table(
    field: string,
    label: string,
    columns: number,
    kinds: readonly EntryKind[] = [],
  ): number[][] | undefined {
    const cells = this.draft.tables[field] ?? [];
    const unit = tableUnit(this.draft, field);
    const rows: number[][] = [];
    for (let start = 0; start < cells.length; start += columns) {
      const row = cells.slice(start, start + columns);
      if (row.every((cell) => cell.trim() === "")) continue;
      const numbers: number[] = [];
      for (let column = 0; column < columns; column += 1) {
        const read = readDraftNumber(
          row[column] ?? "",
          kinds[column] ?? "number",
          unit,
          "zeroOrMore",
        );
        if (!read.ok) {
          const where = messages.rowColumn({
            label,
            start: start / columns + 1,
            column: column + 1,
          });
          this.fault(field, where, ...read.fault.sentence);
          return undefined;
        }
        numbers.push(read.value);
      }
      rows.push(numbers);
    }
    return rows.length === 0 ? undefined : rows;
  }
}

const prefix = "stopfit.packDraft.";

interface KeptDraft {
  readonly draft: ItemDraft;
  /** The item that it began with, as text. */
  readonly base: string;
}

/** A draft that was left unfinished, as after a reload; null where there is none. */
export function readKeptDraft(key: string): KeptDraft | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(prefix + key) ?? "null");
    return isPlainObject(value) && isPlainObject(value.draft)
      ? (value as object as KeptDraft)
      : null;
  } catch {
    return null;
  }
}

export function keepDraft(key: string, kept: KeptDraft | null): void {
  try {
    if (kept === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, JSON.stringify(kept));
  } catch {
    // Refused or full: it holds until the page is closed.
  }
}
