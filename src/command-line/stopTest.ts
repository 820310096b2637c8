import { closeSync, openSync, readSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { type FileSource, importFile } from "../records/testRows/importFile.ts";
import "../saying/everyText.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import * as messages from "../words/compiled/command-line.ts";
import { printable } from "./assessmentTable.ts";
import { unreadable } from "./readFile.ts";
import { startFolder } from "./startFolder.ts";
import { type HitAsked, parseStopTest, stopTestUsage } from "./stopTestArguments.ts";
import { type PrintedTest, printedTest } from "./stopTestJson.ts";
import { stopTestLines } from "./stopTestTable.ts";
import { closePipeQuietly, write } from "./writing.ts";

interface PrintedFile {
  readonly file: string;
  readonly tests: readonly PrintedTest[];
}

/** A file of the disk, read piece by piece. */
function fileSource(path: string): Outcome<FileSource> {
  try {
    const status = statSync(path);
    if (status.isDirectory()) return fail("fileIsFolder", [messages.thisIsFolderNot]);
    if (!status.isFile()) return fail("fileNotPlain", [messages.thisIsDeviceOr]);
    return succeed({
      name: basename(path),
      size: status.size,
      slice: (from, to) => ({
        arrayBuffer: async () => {
          const file = openSync(path, "r");
          try {
            const bytes = new Uint8Array(to - from);
            const count = readSync(file, bytes, 0, bytes.length, from);
            return bytes.buffer.slice(0, count);
          } finally {
            closeSync(file);
          }
        },
      }),
    });
  } catch (error) {
    return unreadable(error);
  }
}

async function readTests(file: string, hit: HitAsked | null): Promise<Outcome<PrintedFile>> {
  try {
    const source = fileSource(resolve(startFolder("stop-test"), file));
    if (!source.ok) return source;
    const tests = await importFile(source.value, {}, () => undefined);
    if (!tests.ok) return tests;
    return succeed({ file, tests: tests.value.map((test) => printedTest(test, hit)) });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return fail("programFault", [messages.readingTestItselfFailed({ reason })]);
  }
}

async function readAll(
  files: readonly string[],
  json: boolean,
  hit: HitAsked | null,
): Promise<number> {
  let failed = false;
  if (json) await write("[");
  for (const [index, file] of files.entries()) {
    const read = await readTests(file, hit);
    failed ||= !read.ok;
    const error = read.ok ? "" : inModelUnits(read.fault.sentence);
    if (json) {
      const element = JSON.stringify(read.ok ? read.value : { file, error }, null, 2);
      await write(`${index === 0 ? "" : ","}\n  ${element.replaceAll("\n", "\n  ")}`);
      continue;
    }
    const text = read.ok
      ? read.value.tests
          .map((test, place) =>
            stopTestLines(
              read.value.tests.length > 1 ? messages.test({ file, place: place + 1 }) : file,
              test,
            ),
          )
          .join("\n\n")
      : messages.notRead({ file: printable(file), error: printable(error) });
    await write(`${index === 0 ? "" : "\n"}${text}\n`);
  }
  if (json) await write("\n]\n");
  return failed ? 1 : 0;
}

async function main(): Promise<number> {
  const parsed = parseStopTest(process.argv.slice(2));
  if (parsed === "help") {
    await write(`${stopTestUsage}\n`);
    return 0;
  }
  if (!parsed.ok) {
    process.stderr.write(`${parsed.message}\n\n${stopTestUsage}\n`);
    return 2;
  }
  return readAll(parsed.value.files, parsed.value.json, parsed.value.hit);
}

closePipeQuietly();
process.exitCode = await main();
