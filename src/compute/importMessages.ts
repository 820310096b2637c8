import type { Fault } from "../physics/outcome.ts";
import type { ImportProgress } from "../records/testRows/importFile.ts";
import type { ImportOptions, TestImport } from "../records/testRows/testFile.ts";

/** One file a worker; its page ends it to cancel. */
export interface ImportRequest {
  readonly file: File;
  readonly options: ImportOptions;
}

export type ImportReply =
  | { readonly kind: "progress"; readonly progress: ImportProgress }
  | { readonly kind: "done"; readonly result: readonly TestImport[] }
  | { readonly kind: "fault"; readonly fault: Fault };
