import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { analyseTests } from "./analyseTest.ts";
import { encodingOf, isText } from "./encoding.ts";
import type { ImportOptions, TestImport } from "./testFile.ts";
import { TestReader } from "./testReader.ts";

export interface ImportProgress {
  readonly phase: "reading" | "analysing";
  readonly bytes: number;
  readonly totalBytes: number;
  readonly rows: number;
}

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
 * held whole. The tests of the file, in its order. Errors: those of the reader and the analysis;
 * "notText"; "fileUnreadable" where the file cannot be read any more.
 */
export async function importFile(
  file: FileSource,
  options: ImportOptions,
  onProgress: (progress: ImportProgress) => void,
  now: () => number = () => performance.now(),
): Promise<Outcome<readonly TestImport[]>> {
  const reader = new TestReader(file.name, options);
  let decoder: TextDecoder | null = null;
  let guessed = false;
  let toldAt = Number.NEGATIVE_INFINITY;
  for (let from = 0; from < file.size; from += pieceBytes) {
    const to = Math.min(from + pieceBytes, file.size);
    let bytes: ArrayBuffer;
    try {
      bytes = await file.slice(from, to).arrayBuffer();
    } catch {
      return fail("fileUnreadable", [messages.fileCannotBeRead]);
    }
    if (decoder === null) {
      const start = new Uint8Array(bytes);
      const encoding = encodingOf(start, to === file.size);
      if (!isText(start, encoding)) return fail("notText", notText);
      guessed = encoding === "windows-1252";
      decoder = new TextDecoder(encoding);
    }
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
    rows: reader.rows,
  });
  const tests = analyseTests(read.value, options);
  return tests.ok && guessed ? succeed(tests.value.map(withGuessedEncoding)) : tests;
}

const notText = [messages.thisFileIsNo];

function withGuessedEncoding(test: TestImport): TestImport {
  const remark = {
    code: "encodingGuessed" as const,
    sentence: [messages.lettersOfThisFile],
  };
  return { ...test, file: { ...test.file, remarks: [...test.file.remarks, remark] } };
}
