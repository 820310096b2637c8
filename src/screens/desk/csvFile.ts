import type { Fault } from "../../physics/outcome.ts";
import { byteOrderMark, type CsvStyle, csvStyleOf } from "../../records/review/csv.ts";
import { saveFile } from "../../sharing/saveFile.ts";
import * as messages from "../../words/compiled/screens/desk.ts";

/** As the programs for tables of this machine expect it. */
export function styleHere(): CsvStyle {
  return csvStyleOf(globalThis.navigator?.language);
}

/** Lines as a file of today's: "stopfit-parts-2026-11-30.csv". */
export function csvFile(what: string, lines: readonly BlobPart[], now = new Date()): File {
  const name = `stopfit-${what}-${now.toISOString().slice(0, 10)}.csv`;
  return new File([byteOrderMark, ...lines], name, { type: "text/csv" });
}

/** Has the browser save a table; the fault where the person would not have it saved after all. */
export async function saveCsvFile(table: File): Promise<Fault | null> {
  if (await saveFile(table)) return null;
  return { code: "tableNotSaved", sentence: [messages.tableIsNotSaved] };
}
