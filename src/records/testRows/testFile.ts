import type { BenchTest, Remark, TestAnalysis } from "../../physics/stopTests/benchTest.ts";

/** What a column of a test file measures. */
export type TestQuantity = "depth" | "speed" | "force" | "time";

/** The units a column may be in. */
export type TestUnit =
  | "mm"
  | "cm"
  | "m"
  | "in"
  | "N"
  | "kN"
  | "lbf"
  | "mm/s"
  | "m/s"
  | "in/s"
  | "mm/min"
  | "s"
  | "ms"
  | "min";

/** One column that is used: its place from 0, what it measures, its unit and its heading as found. */
export interface TestColumn {
  readonly index: number;
  readonly quantity: TestQuantity;
  readonly unit: TestUnit;
  readonly heading: string;
}

export interface ImportOptions {
  /** Columns as the person chose them, where the file's own headings are refused or absent. */
  readonly columns?: readonly Omit<TestColumn, "heading">[];
  /** Greatest speed of a static row, mm/s. */
  readonly staticSpeedMmPerS?: number;
}

/** How the file was read. */
export interface TestFileFacts {
  readonly name: string;
  readonly columns: readonly TestColumn[];
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  readonly rows: number;
  /** Rows without a number in a needed column. */
  readonly rowsLeftOut: number;
  readonly remarks: readonly Remark[];
}

/** A test file read and analysed. Plain data: it passes between worker and page. */
export interface TestImport {
  readonly file: TestFileFacts;
  readonly analysis: TestAnalysis;
}

/** A test file read, not yet analysed. */
export interface ReadTest {
  readonly file: TestFileFacts;
  readonly test: BenchTest;
}
