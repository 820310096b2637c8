import { isNumber } from "./columns.ts";
import { DelimitedRows, delimiters } from "./delimitedRows.ts";
import { encodingOf } from "./encoding.ts";
import type { FileSource } from "./importFile.ts";

/** As far as a file is looked into: past headers of thousands of lines. */
const glanceBytes = 262_144;
const [shownRows, rowsAbove, fewestNumbers] = [4, 2, 2] as const;

/**
 * A few rows of a file to tell its columns by, in its own letters and cut as the reader cuts it: the first
 * two with numbers and the two above them; its first rows where none has.
 */
export async function fileGlance(file: FileSource): Promise<readonly (readonly string[])[]> {
  const bytes = new Uint8Array(await file.slice(0, glanceBytes).arrayBuffer());
  const whole = bytes.length === file.size;
  const decoder = new TextDecoder(encodingOf(bytes, whole));
  const text = decoder.decode(bytes, { stream: !whole });
  const cut = delimiters.map((delimiter) =>
    new DelimitedRows(delimiter)
      .push(text, whole)
      .filter((cells) => cells.some((cell) => cell.trim() !== "")),
  );
  const numbered = (rows: readonly (readonly string[])[]) => rows.filter(holdsNumbers).length;
  const rows = cut.reduce((one, other) => (numbered(other) > numbered(one) ? other : one));
  // A header's own line may hold numbers: those of a table go on.
  const first = rows.findIndex(
    (cells, place) => holdsNumbers(cells) && holdsNumbers(rows[place + 1] ?? cells),
  );
  const from = Math.max(0, first - rowsAbove);
  return rows.slice(from, from + shownRows).map((cells) => cells.map((cell) => cell.trim()));
}

function holdsNumbers(cells: readonly string[]): boolean {
  return cells.filter(isNumber).length >= fewestNumbers;
}
