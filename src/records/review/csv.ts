import type { Sentence, Words } from "../../physics/sentence.ts";

/** One field of a table: a text, a number, or nothing. */
export type CsvField = string | number | null | undefined;

/** A field before it is put into words. */
export type TableCell = Words | Sentence | number | null | undefined;

/** How a machine's programs for tables expect a table. */
export interface CsvStyle {
  readonly separator: "," | ";";
  readonly decimal: "." | ",";
}

const rfc4180: CsvStyle = { separator: ",", decimal: "." };

/**
 * Where numbers are written with a decimal comma, programs for tables take the comma for no separator
 * (common practice, no source).
 */
export function csvStyleOf(locale: string | undefined): CsvStyle {
  const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
  const decimal = parts.find(({ type }) => type === "decimal")?.value;
  return decimal === "," ? { separator: ";", decimal: "," } : rfc4180;
}

/** How a program for tables begins a formula or leaves its cell; wide signs too, as some keyboards write. */
const formulaStart = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;

/**
 * A field as RFC 4180 has it. A text that a program for tables would take for a formula gets an
 * apostrophe in front; a number stays a number, minus and all. What is no usable number stays empty.
 */
export function csvField(field: CsvField, { decimal }: CsvStyle = rfc4180): string {
  if (field === null || field === undefined) return "";
  if (typeof field === "number") {
    return Number.isFinite(field) ? String(field).replace(".", decimal) : "";
  }
  const text = formulaStart.test(field) ? `'${field}` : field;
  return /[",;\t\r\n]/.test(text) || text !== text.trim()
    ? `"${text.replaceAll('"', '""')}"`
    : text;
}

export function csvLine(fields: readonly CsvField[], style: CsvStyle = rfc4180): string {
  return `${fields.map((field) => csvField(field, style)).join(style.separator)}\r\n`;
}

/** Tells programs for tables that what follows is UTF-8. */
export const byteOrderMark = "\ufeff";
