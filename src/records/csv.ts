/** One field of a table: a text, a number, or nothing. */
export type CsvField = string | number | null | undefined;

/** How a program for tables begins a formula or leaves its cell. */
const formulaStart = /^[=+\-@\t\r]/;

/**
 * A field as RFC 4180 has it. A text that a program for tables would take for a formula gets an
 * apostrophe in front; a number stays a number, minus and all. What is no usable number stays empty.
 */
export function csvField(field: CsvField): string {
  if (field === null || field === undefined) return "";
  if (typeof field === "number") return Number.isFinite(field) ? String(field) : "";
  const text = formulaStart.test(field) ? `'${field}` : field;
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}

export function csvLine(fields: readonly CsvField[]): string {
  return `${fields.map(csvField).join(",")}\r\n`;
}

/** Tells programs for tables that what follows is UTF-8. */
export const byteOrderMark = "\ufeff";
