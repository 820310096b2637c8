import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { Remark } from "../../physics/stopTests/benchTest.ts";
import { type ColumnsFound, columnsOf, headingsIn } from "./columns.ts";
import { type NumberStyle, numberIn, numberStyleOf } from "./decimalNumbers.ts";
import { DelimitedRows, type Delimiter, delimiters } from "./delimitedRows.ts";
import { GrowingColumn } from "./growingColumn.ts";
import type { ImportOptions, ReadTest, TestColumn, TestQuantity } from "./testFile.ts";
import { testUnitFactor } from "./testUnits.ts";

/** Characters from which headings, delimiter and decimal mark are told. */
const headCharacters = 65_536;
const headRows = 200;
/** A row longer than this is a quotation mark that was never closed. */
const longestRow = 1_000_000;
/** Above real tests: a million rows and more. */
export const mostTestRows = 5_000_000;
/** Share of rows without numbers from which the file is refused. */
const mostLeftOut = 0.2;

/** Beyond this, mm, mm/s, N or s, a number is no measurement but a slip of its file. */
const greatestMeasured = 1e9;

interface Layout {
  readonly delimiter: Delimiter;
  readonly found: ColumnsFound;
  readonly style: NumberStyle;
}

/**
 * Reads a test file whose text comes in pieces: headings, delimiter and decimal mark from its beginning,
 * then its rows as numbers in mm, mm/s, N and s. Never holds more text than one piece and one row.
 *
 * Errors, told by `push` as soon as they are known: those of `columnsOf` and `numberStyleOf`,
 * "commaBetweenAndWithin", "rowTooLong", "tooManyRows"; by `finish`: "fileEmpty", "tooManyUnreadable".
 */
export class TestReader {
  readonly #name: string;
  readonly #options: ImportOptions;
  #head: string | null = "";
  #layout: Layout | null = null;
  #rows: DelimitedRows | null = null;
  #skip = 0;
  #columns: { readonly column: TestColumn; readonly factor: number; readonly to: GrowingColumn }[] =
    [];
  #leftOut = 0;

  constructor(name: string, options: ImportOptions = {}) {
    this.#name = name;
    this.#options = options;
  }

  /** Rows of numbers so far. */
  get rows(): number {
    return this.#columns[0]?.to.length ?? 0;
  }

  push(piece: string): Outcome<null> {
    if (this.#head === null) return this.#take(piece, false);
    this.#head += piece;
    return this.#head.length < headCharacters ? succeed(null) : this.#begin(false);
  }

  finish(): Outcome<ReadTest> {
    const taken = this.#head === null ? this.#take("", true) : this.#begin(true);
    if (!taken.ok) return taken;
    const layout = this.#layout;
    const all = this.rows + this.#leftOut;
    if (layout === null || all === 0) return fail("fileEmpty", fileEmpty);
    if (this.rows === 0 || this.#leftOut > mostLeftOut * all) {
      return fail("tooManyUnreadable", [
        { kind: "count", value: this.#leftOut },
        " of ",
        { kind: "count", value: all },
        " rows have no number in a needed column. Check the columns and the decimal mark of the file.",
      ]);
    }
    return succeed({
      file: {
        name: this.#name,
        columns: layout.found.columns,
        delimiter: layout.delimiter,
        decimalMark: layout.style.decimalMark,
        rows: this.rows,
        rowsLeftOut: this.#leftOut,
        remarks: [
          ...layout.found.remarks,
          ...(this.#leftOut === 0 ? [] : [leftOutRemark(this.#leftOut)]),
        ],
      },
      test: this.#test(),
    });
  }

  #begin(last: boolean): Outcome<null> {
    const head = (this.#head ?? "").replace(/^\uFEFF/, "");
    this.#head = null;
    if (head.trim() === "") return fail("fileEmpty", fileEmpty);
    const layout = layoutOf(head, last, this.#options);
    if (!layout.ok) return layout;
    this.#layout = layout.value;
    this.#columns = layout.value.found.columns.map((column) => ({
      column,
      factor: testUnitFactor(column.unit),
      to: new GrowingColumn(),
    }));
    this.#rows = new DelimitedRows(layout.value.delimiter);
    this.#skip = layout.value.found.firstRow;
    return this.#take(head, last);
  }

  #take(piece: string, last: boolean): Outcome<null> {
    const rows = this.#rows;
    const style = this.#layout?.style;
    if (rows === null || style === undefined) return fail("fileEmpty", fileEmpty);
    for (const cells of rows.push(piece, last)) {
      if (this.#skip > 0) this.#skip--;
      else this.#addRow(cells, style);
    }
    if (rows.waiting > longestRow) return fail("rowTooLong", rowTooLong);
    return this.rows > mostTestRows ? fail("tooManyRows", tooManyRows) : succeed(null);
  }

  #addRow(cells: readonly string[], style: NumberStyle): void {
    if (cells.length <= 1 && (cells[0] ?? "").trim() === "") return;
    const columns = this.#columns;
    for (const { column, factor, to } of columns) {
      const value = numberIn(cells[column.index] ?? "", style) * factor;
      if (!(Math.abs(value) <= greatestMeasured)) {
        this.#leftOut++;
        for (const each of columns) each.to.trim(this.#shortest());
        return;
      }
      to.push(value);
    }
  }

  #shortest(): number {
    return Math.min(...this.#columns.map(({ to }) => to.length));
  }

  #test(): ReadTest["test"] {
    const values = (quantity: TestQuantity): Float64Array =>
      this.#columns.find(({ column }) => column.quantity === quantity)?.to.values() ??
      new Float64Array(this.rows);
    return this.#columns.some(({ column }) => column.quantity === "speed")
      ? {
          kind: "rows",
          depthMm: values("depth"),
          speedMmPerS: values("speed"),
          forceN: values("force"),
        }
      : {
          kind: "cycles",
          timeS: values("time"),
          displacementMm: values("depth"),
          forceN: values("force"),
        };
  }
}

function layoutOf(head: string, last: boolean, options: ImportOptions): Outcome<Layout> {
  const tried = delimiters.map((delimiter) => ({
    delimiter,
    rows: new DelimitedRows(delimiter).push(head, last).slice(0, headRows),
  }));
  const score = (rows: readonly (readonly string[])[]) =>
    options.columns === undefined
      ? Math.max(0, ...rows.map(headingsIn))
      : rows.filter((cells) => readable(cells, options.columns ?? [])).length;
  const best = tried.reduce((one, other) => (score(other.rows) > score(one.rows) ? other : one));
  const found =
    options.columns === undefined
      ? columnsOf(best.rows)
      : chosenColumns(best.rows, options.columns);
  if (!found.ok) return found;
  const data = best.rows.slice(found.value.firstRow);
  const widest = best.rows[found.value.firstRow - 1]?.length ?? 0;
  if (best.delimiter === "," && widest > 0 && isCutTwice(data, widest)) {
    return fail("commaBetweenAndWithin", commaBetweenAndWithin);
  }
  const style = numberStyleOf(
    data.flatMap((cells) => found.value.columns.map(({ index }) => cells[index] ?? "")),
  );
  if (!style.ok) return style;
  return succeed({ delimiter: best.delimiter, found: found.value, style: style.value });
}

const looksLikeNumber = /^\s*[+-]?[\d.,]*\d[\d.,]*(?:[eE][+-]?\d+)?\s*$/;

function readable(
  cells: readonly string[],
  columns: NonNullable<ImportOptions["columns"]>,
): boolean {
  return columns.every(({ index }) => looksLikeNumber.test(cells[index] ?? ""));
}

/** Columns as the person chose them: rows begin where all of them hold numbers. */
function chosenColumns(
  rows: readonly (readonly string[])[],
  columns: NonNullable<ImportOptions["columns"]>,
): Outcome<ColumnsFound> {
  const firstRow = rows.findIndex((cells) => readable(cells, columns));
  if (firstRow === -1) {
    return fail("columnsNotUsable", [
      "The chosen columns hold no numbers at the beginning of this file. Choose others.",
    ]);
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

function leftOutRemark(count: number): Remark {
  return {
    code: "rowsLeftOut",
    sentence: [
      { kind: "count", value: count },
      count === 1
        ? " row without a number in a needed column was left out."
        : " rows without a number in a needed column were left out.",
    ],
  };
}

const fileEmpty = ["This file holds no rows of numbers. Choose the file of a bench test."];
const rowTooLong = [
  "A row of this file does not end: a quotation mark is open, or this is no table. Check the file.",
];
const tooManyRows = [
  "This file holds more than 5 million rows. Cut it into parts, or record fewer samples.",
];
const commaBetweenAndWithin = [
  "This file has commas both between its columns and within its numbers, so they cannot be told apart. Save it with semicolons between the columns.",
];
