import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { type ColumnsFound, columnsOf, headingsIn, isNumber } from "./columns.ts";
import { mixedMarks, type NumberStyle, wrongMarkIn } from "./decimalNumbers.ts";
import { DelimitedRows } from "./delimitedRows.ts";
import { type FileLayout, fileLayout } from "./fileLayout.ts";
import { PartReader } from "./partReader.ts";
import type { ImportOptions, ReadTest } from "./testFile.ts";

/** Characters from which headings, delimiter and decimal mark are told. */
const headCharacters = 131_072;
/** A row longer than this is a quotation mark that was never closed. */
const longestRow = 1_000_000;
/** Above real tests: a million rows and more. */
const mostTestRows = 5_000_000;
/** Rows after new headings from which their columns are told. */
const rowsOfHeadings = 5;
const mostParts = 200;

/**
 * Reads a test file whose text comes in pieces: headings, delimiter and decimal mark from its beginning,
 * then its rows as numbers in mm, mm/s, N and s. New headings within the file begin a new test. Never
 * holds more text than one piece and one row.
 *
 * Errors, told by `push` as soon as they are known: those of `fileLayout` and `columnsOf`,
 * "decimalMarkMixed", "rowTooLong", "tooManyRows"; by `finish`: "fileEmpty", "tooManyUnreadable".
 */
export class TestReader {
  readonly #name: string;
  readonly #options: ImportOptions;
  #head: string | null = "";
  #layout: FileLayout | null = null;
  #rows: DelimitedRows | null = null;
  #skip = 0;
  #part: PartReader | null = null;
  readonly #parts: PartReader[] = [];
  /** New headings and the rows after them, until their columns are told. */
  #headings: (readonly string[])[] | null = null;
  #title = "";

  constructor(name: string, options: ImportOptions = {}) {
    this.#name = name;
    this.#options = options;
  }

  /** Rows of numbers so far. */
  get rows(): number {
    return this.#parts.reduce((sum, part) => sum + part.rows, 0);
  }

  push(piece: string): Outcome<null> {
    if (this.#head === null) return this.#take(piece, false);
    this.#head += piece;
    return this.#head.length < headCharacters ? succeed(null) : this.#begin(false);
  }

  /** The tests of the file, in its order. */
  finish(): Outcome<readonly ReadTest[]> {
    const taken = this.#head === null ? this.#take("", true) : this.#begin(true);
    if (!taken.ok) return taken;
    const ended = this.#endHeadings();
    if (!ended.ok) return ended;
    const layout = this.#layout;
    const parts = this.#parts.filter((part, index) => index === 0 || part.rows > 0);
    if (layout === null || parts.every((part) => part.rows + part.leftOut === 0)) {
      return fail("fileEmpty", fileEmpty);
    }
    const read: ReadTest[] = [];
    for (const [index, part] of parts.entries()) {
      const test = part.finish(this.#name, layout, { index, of: parts.length });
      if (!test.ok) return test;
      read.push(test.value);
    }
    return succeed(read);
  }

  #begin(last: boolean): Outcome<null> {
    const head = (this.#head ?? "").replace(/^\uFEFF/, "");
    this.#head = null;
    if (head.trim() === "") return fail("fileEmpty", fileEmpty);
    const layout = fileLayout(head, last, this.#options);
    if (!layout.ok) return layout;
    this.#layout = layout.value;
    this.#rows = new DelimitedRows(layout.value.delimiter);
    this.#skip = layout.value.found.firstRow;
    this.#open(layout.value.found, "");
    return this.#take(head, last);
  }

  #open(found: ColumnsFound, title: string): PartReader {
    const part = new PartReader(found, title);
    this.#part = part;
    this.#parts.push(part);
    this.#title = "";
    return part;
  }

  #take(piece: string, last: boolean): Outcome<null> {
    const rows = this.#rows;
    const layout = this.#layout;
    if (rows === null || layout === null) return fail("fileEmpty", fileEmpty);
    for (const cells of rows.push(piece, last)) {
      if (this.#skip > 0) {
        this.#skip--;
        if (this.#skip > 0) this.#keepTitle(cells);
        else this.#part?.entitle(this.#title);
        continue;
      }
      const added = this.#addRow(cells, layout.style);
      if (!added.ok) return added;
    }
    if (rows.waiting > longestRow) return fail("rowTooLong", rowTooLong);
    return this.rows > mostTestRows ? fail("tooManyRows", tooManyRows) : succeed(null);
  }

  #addRow(cells: readonly string[], style: NumberStyle): Outcome<null> {
    if (this.#headings !== null) {
      this.#headings.push(cells);
      return this.#headings.length <= rowsOfHeadings ? succeed(null) : this.#endHeadings();
    }
    if (this.#part?.add(cells, style) !== false) return succeed(null);
    if (cells.every((cell) => cell.trim() === "")) return succeed(null);
    const mixed = cells.find((cell) => wrongMarkIn(cell, style));
    if (mixed !== undefined) return mixedMarks(mixed);
    if (this.#options.columns === undefined && headingsIn(cells) >= 2 && !cells.some(isNumber)) {
      if (this.#parts.length >= mostParts) return fail("tooManyTests", tooManyTests);
      this.#headings = [cells];
      return succeed(null);
    }
    this.#keepTitle(cells);
    this.#part?.leaveOut(cells);
    return succeed(null);
  }

  /** Columns of a new test; its first rows, which were held, are added to it. */
  #endHeadings(): Outcome<null> {
    const held = this.#headings;
    this.#headings = null;
    const style = this.#layout?.style;
    if (held === null || style === undefined) return succeed(null);
    const found = columnsOf(held);
    if (!found.ok) {
      // No numbers follow: a sentence that holds the words.
      if (found.fault.code !== "headingsNotKnown") return found;
      for (const cells of held.slice(1)) {
        const added = this.#addRow(cells, style);
        if (!added.ok) return added;
      }
      return succeed(null);
    }
    const part = this.#open(found.value, this.#title);
    this.#parts.at(-2)?.forgetText();
    for (const cells of held.slice(found.value.firstRow)) {
      if (!part.add(cells, style)) part.leaveOut(cells);
    }
    return succeed(null);
  }

  #keepTitle(cells: readonly string[]): void {
    const text = cells
      .filter((cell) => cell.trim() !== "")
      .join(" ")
      .trim();
    if (text !== "") this.#title = text.slice(0, 120);
  }
}

const fileEmpty = [messages.thisFileHoldsNo];
const rowTooLong = [messages.rowOfThisFile];
const tooManyRows = [messages.thisFileHoldsMore];
const tooManyTests = [messages.thisFileHoldsMoreThan];
