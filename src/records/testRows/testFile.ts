import type { BenchTest, Remark, TestAnalysis } from "../../physics/stopTests/index.ts";

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
  | "daN"
  | "lbf"
  | "kgf"
  | "kip"
  | "mm/s"
  | "cm/s"
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
  /** What is known of the stop that was tested: numbers far from it are asked about. */
  readonly stop?: KnownStop;
}

/** Of a stop as the pack has it. */
export interface KnownStop {
  readonly freeHeightMm: number;
  readonly curve: readonly (readonly [mm: number, N: number])[];
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
  /** Which of the tests in the file it is, from 0, of how many, and the line above its headings. */
  readonly part: { readonly index: number; readonly of: number; readonly title: string };
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
  /** The file's own speeds beside its times, mm/s, row by row. */
  readonly speedMmPerS?: Float64Array;
}
