import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { type ColumnsFound, columnsOf, headingRow, headingsIn, isNumber } from "./columns.ts";
import { type NumberStyle, numberStyleOf } from "./decimalNumbers.ts";
import { DelimitedRows, type Delimiter, delimiters } from "./delimitedRows.ts";
import type { ImportOptions } from "./testFile.ts";

/** How a file is written, and where its first numbers stand. */
export interface FileLayout {
  readonly delimiter: Delimiter;
  readonly found: ColumnsFound;
  readonly style: NumberStyle;
}

/** Rows among which headings are looked for. */
const headRows = 1000;

/**
 * Delimiter, columns and number style from the beginning of a file. `last`: that is all of it.
 *
 * Errors: those of `columnsOf` and `numberStyleOf`, "commaBetweenAndWithin", "spacesBetween",
 * "columnsNotUsable" (chosen columns without numbers).
 */
export function fileLayout(
  head: string,
  last: boolean,
  options: ImportOptions,
): Outcome<FileLayout> {
  const { columns } = options;
  const tried = delimiters.map((delimiter) => ({
    delimiter,
    rows: new DelimitedRows(delimiter).push(head, last).slice(0, headRows),
  }));
  const score = (rows: readonly (readonly string[])[]) =>
    columns === undefined
      ? headingsIn(rows[headingRow(rows)] ?? []) + Math.max(0, ...rows.map(headingsIn)) / 100
      : rows.filter((cells) => readable(cells, columns)).length;
  const best = tried.reduce((one, other) => (score(other.rows) > score(one.rows) ? other : one));
  const found = columns === undefined ? columnsOf(best.rows) : chosenColumns(best.rows, columns);
  if (!found.ok) {
    return found.fault.code === "headingsNotKnown" && isCutBySpaces(head)
      ? fail("spacesBetween", spacesBetween)
      : found;
  }
  const data = best.rows.slice(found.value.firstRow);
  const widest = best.rows[found.value.firstRow - 1]?.length ?? 0;
  if (best.delimiter === "," && widest > 0 && isCutTwice(data, widest)) {
    return fail("commaBetweenAndWithin", commaBetweenAndWithin);
  }
  const style = numberStyleOf(
    found.value.columns.map(({ index }) => data.map((cells) => cells[index] ?? "")),
  );
  if (!style.ok) return style;
  return succeed({ delimiter: best.delimiter, found: found.value, style: style.value });
}

function readable(
  cells: readonly string[],
  columns: NonNullable<ImportOptions["columns"]>,
): boolean {
  return columns.every(({ index }) => isNumber(cells[index]));
}

/** Columns as the person chose them: rows begin where all of them hold numbers. */
function chosenColumns(
  rows: readonly (readonly string[])[],
  columns: NonNullable<ImportOptions["columns"]>,
): Outcome<ColumnsFound> {
  const firstRow = rows.findIndex((cells) => readable(cells, columns));
  if (firstRow === -1) {
    return fail("columnsNotUsable", [messages.chosenColumnsHoldNo]);
  }
  const heading = rows[firstRow - 1] ?? [];
  return succeed({
    columns: columns.map((column) => ({ ...column, heading: heading[column.index] ?? "" })),
    firstRow,
    remarks: [],
  });
}

/** Most rows have twice the cells of the headings: decimal commas between commas. */
function isCutTwice(data: readonly (readonly string[])[], width: number): boolean {
  const cut = data.filter((cells) => cells.length > width && cells.length <= 2 * width);
  return data.length > 0 && cut.length > data.length / 2;
}

/** Numbers that stand in one line after another with nothing but spaces between. */
function isCutBySpaces(head: string): boolean {
  const lines = head.split(/\r\n|\n|\r/, headRows).filter((line) => line.trim() !== "");
  const cut = lines.filter((line) => {
    const cells = line.trim().split(/ +/);
    return cells.length >= 3 && cells.every((cell) => /^[+-]?[\d.,]+(?:e[+-]?\d+)?$/i.test(cell));
  });
  return cut.length > lines.length / 2;
}

const spacesBetween = [messages.onlySpacesStandBetween];

const commaBetweenAndWithin = [messages.thisFileHasCommas];
