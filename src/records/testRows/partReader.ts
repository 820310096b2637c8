import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { Remark } from "../../physics/stopTests/index.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import type { ColumnsFound } from "./columns.ts";
import { type NumberStyle, numberIn } from "./decimalNumbers.ts";
import type { FileLayout } from "./fileLayout.ts";
import { GrowingColumn } from "./growingColumn.ts";
import type { ReadTest, TestColumn, TestFileFacts, TestQuantity } from "./testFile.ts";
import { testUnitFactor } from "./testUnits.ts";

/** Share of rows without numbers from which the file is refused. */
const mostLeftOut = 0.2;
/** Beyond this, mm, mm/s, N or s, a number is no measurement but a slip of its file. */
const greatestMeasured = 1e9;

/** The rows of one test of a file, as numbers in mm, mm/s, N and s. */
export class PartReader {
  readonly #found: ColumnsFound;
  #title: string;
  readonly #columns: readonly {
    readonly column: TestColumn;
    readonly factor: number;
    readonly to: GrowingColumn;
    /** The number of the row that is being read. */
    read: number;
  }[];
  leftOut = 0;
  /** Rows of text alone since the last row of numbers: they may belong to the next test. */
  #text = 0;

  constructor(found: ColumnsFound, title: string) {
    this.#found = found;
    this.#title = title;
    this.#columns = found.columns.map((column) => ({
      column,
      factor: testUnitFactor(column.unit),
      to: new GrowingColumn(),
      read: Number.NaN,
    }));
  }

  get rows(): number {
    return this.#columns[0]?.to.length ?? 0;
  }

  entitle(title: string): void {
    this.#title = title;
  }

  /** False where a needed column holds no number; nothing is added then. */
  add(cells: readonly string[], style: NumberStyle): boolean {
    for (const held of this.#columns) {
      held.read = numberIn(cells[held.column.index] ?? "", style) * held.factor;
      if (!(Math.abs(held.read) <= greatestMeasured)) return false;
    }
    for (const { to, read } of this.#columns) to.push(read);
    this.#text = 0;
    return true;
  }

  leaveOut(cells: readonly string[]): void {
    this.leftOut++;
    const holdsDigits = this.#columns.some(({ column }) => /\d/.test(cells[column.index] ?? ""));
    this.#text = holdsDigits ? 0 : this.#text + 1;
  }

  /** The lines of text at the end were the beginning of another test. */
  forgetText(): void {
    this.leftOut -= this.#text;
    this.#text = 0;
  }

  finish(
    name: string,
    layout: FileLayout,
    part: { readonly index: number; readonly of: number },
  ): Outcome<ReadTest> {
    const all = this.rows + this.leftOut;
    if (this.rows === 0 || this.leftOut > mostLeftOut * all) {
      return fail("tooManyUnreadable", [
        messages.ofRowsHaveNo({
          leftOut: { kind: "count", value: this.leftOut },
          all: { kind: "count", value: all },
        }),
      ]);
    }
    const file: TestFileFacts = {
      name,
      columns: this.#found.columns,
      delimiter: layout.delimiter,
      decimalMark: layout.style.decimalMark,
      rows: this.rows,
      rowsLeftOut: this.leftOut,
      part: { ...part, title: this.#title },
      remarks: [
        ...this.#found.remarks,
        ...(part.of > 1 ? [partsRemark(part, this.#title)] : []),
        ...(this.leftOut === 0 ? [] : [leftOutRemark(this.leftOut)]),
      ],
    };
    return succeed({ file, ...this.#test() });
  }

  #test(): Pick<ReadTest, "test" | "speedMmPerS"> {
    const values = (quantity: TestQuantity): Float64Array | null =>
      this.#columns.find(({ column }) => column.quantity === quantity)?.to.values() ?? null;
    const empty = new Float64Array(0);
    const timeS = values("time");
    const speed = values("speed");
    const depth = values("depth") ?? empty;
    const forceN = values("force") ?? empty;
    return timeS === null
      ? { test: { kind: "rows", depthMm: depth, speedMmPerS: speed ?? empty, forceN } }
      : {
          test: { kind: "cycles", timeS, displacementMm: depth, forceN },
          ...(speed !== null && { speedMmPerS: speed }),
        };
  }
}

function leftOutRemark(count: number): Remark {
  return {
    code: "rowsLeftOut",
    sentence: [
      messages.rowWithoutNumberIn({
        count: { kind: "count", value: count },
        count2: count,
      }),
    ],
  };
}

function partsRemark(part: { readonly index: number; readonly of: number }, title: string): Remark {
  return {
    code: "partsOfFile",
    asks: true,
    sentence: [
      messages.thisFileHoldsTests({
        of: { kind: "count", value: part.of },
        index: { kind: "count", value: part.index + 1 },
        hasTitle: title !== "",
        title,
      }),
    ],
  };
}
