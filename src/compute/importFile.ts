import { fail, type Outcome } from "../physics/outcome.ts";
import { analyseTest } from "../records/testRows/analyseTest.ts";
import type { ImportOptions, TestImport } from "../records/testRows/testFile.ts";
import { TestReader } from "../records/testRows/testReader.ts";
import type { ImportProgress } from "./importMessages.ts";

/** Bytes read and turned into rows at a time: some milliseconds. */
const pieceBytes = 262_144;
const progressMs = 100;

/** Where a file's text comes from: a File of the page, or anything that can be cut into pieces. */
export interface FileSource {
  readonly name: string;
  readonly size: number;
  slice(from: number, to: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/**
 * Reads and analyses a test file piece by piece, so that neither its text nor its rows of text are ever
 * held whole. Errors: those of the reader and the analysis; "fileUnreadable" where the file cannot be
 * read any more.
 */
export async function importFile(
  file: FileSource,
  options: ImportOptions,
  onProgress: (progress: ImportProgress) => void,
  now: () => number = () => performance.now(),
): Promise<Outcome<TestImport>> {
  const reader = new TestReader(file.name, options);
  let decoder: TextDecoder | null = null;
  let toldAt = Number.NEGATIVE_INFINITY;
  for (let from = 0; from < file.size; from += pieceBytes) {
    const to = Math.min(from + pieceBytes, file.size);
    let bytes: ArrayBuffer;
    try {
      bytes = await file.slice(from, to).arrayBuffer();
    } catch {
      return fail("fileUnreadable", [
        "The file cannot be read any more. It may have been moved or changed; choose it again.",
      ]);
    }
    decoder ??= new TextDecoder(encodingOf(new Uint8Array(bytes, 0, Math.min(2, to - from))));
    const pushed = reader.push(decoder.decode(bytes, { stream: to < file.size }));
    if (!pushed.ok) return pushed;
    if (now() - toldAt >= progressMs) {
      toldAt = now();
      onProgress({ phase: "reading", bytes: to, totalBytes: file.size, rows: reader.rows });
    }
  }
  const read = reader.finish();
  if (!read.ok) return read;
  onProgress({
    phase: "analysing",
    bytes: file.size,
    totalBytes: file.size,
    rows: read.value.file.rows,
  });
  return analyseTest(read.value, options);
}

/** By the byte order mark that spreadsheets write; UTF-8 without one. */
function encodingOf(start: Uint8Array): string {
  if (start[0] === 0xff && start[1] === 0xfe) return "utf-16le";
  return start[0] === 0xfe && start[1] === 0xff ? "utf-16be" : "utf-8";
}
