import type { Fault } from "../physics/outcome.ts";
import type { ImportOptions, TestImport } from "../records/testRows/testFile.ts";

export interface ImportProgress {
  readonly bytes: number;
  readonly totalBytes: number;
  readonly rows: number;
}

export interface ImportHandlers {
  /** Every ~100 ms. */
  onProgress(progress: ImportProgress): void;
  onDone(result: TestImport): void;
  /** One sentence; code "headingsNotKnown" and the like may be met by choosing `columns`. */
  onFault(fault: Fault): void;
}

export interface TestImporter {
  /** Reads and analyses a CSV file in its own worker. Returns a function that cancels. */
  start(file: File, handlers: ImportHandlers, options?: ImportOptions): () => void;
  dispose(): void;
}

export declare function createTestImporter(): TestImporter;
