import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { analyseRows, analyseTimed, type TestAnalysis } from "../../physics/stopTests/index.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { oddities, speedOddity } from "./oddities.ts";
import type { ImportOptions, ReadTest, TestImport, TestQuantity } from "./testFile.ts";
import { TestReader } from "./testReader.ts";
import { testUnitFactor } from "./testUnits.ts";

/**
 * A test that was read, analysed by its kind, with what looks like a slip of its file among the remarks.
 * Errors: those of `analyseRows` and `analyseTimed`.
 */
function analyseTest(read: ReadTest, options: ImportOptions = {}): Outcome<TestImport> {
  const analysis = analysisOf(read, options);
  if (!analysis.ok) return analysis;
  const { file } = read;
  const remarks = [
    ...file.remarks,
    ...speedOddity(read),
    ...oddities(analysis.value, options.stop ?? null),
  ];
  return succeed({ file: { ...file, remarks }, analysis: analysis.value });
}

function analysisOf({ file, test }: ReadTest, options: ImportOptions): Outcome<TestAnalysis> {
  const factor = (quantity: TestQuantity): number => {
    const column = file.columns.find((each) => each.quantity === quantity);
    return column === undefined ? 1 : testUnitFactor(column.unit);
  };
  const slow =
    options.staticSpeedMmPerS === undefined ? {} : { staticSpeedMmPerS: options.staticSpeedMmPerS };
  const depth = factor("depth");
  const force = factor("force");
  return test.kind === "rows"
    ? analyseRows(test, { ...slow, factors: { depth, speed: factor("speed"), force } })
    : analyseTimed(test, { ...slow, factors: { displacement: depth, force } });
}

/**
 * All tests of a file, in its order. One that cannot be analysed is left out and told of by the others;
 * its fault is the file's where no other can.
 */
export function analyseTests(
  read: readonly ReadTest[],
  options: ImportOptions = {},
): Outcome<readonly TestImport[]> {
  const found = read.map((test) => analyseTest(test, options));
  const good = found.flatMap((each) => (each.ok ? [each.value] : []));
  const faults = found.flatMap((each) => (each.ok ? [] : [each.fault]));
  const first = faults[0];
  if (good.length === 0) return first ? { ok: false, fault: first } : fail("fileEmpty", []);
  if (first === undefined) return succeed(good);
  const told = {
    code: "testsNotUsable" as const,
    sentence: [
      messages.ofTestsInThis({
        faults: { kind: "count" as const, value: faults.length },
        sentence: first.sentence,
      }),
    ],
  };
  return succeed(
    good.map(({ file, analysis }) => ({
      file: { ...file, remarks: [...file.remarks, told] },
      analysis,
    })),
  );
}

/** The tests of a file from its whole text. Errors: those of `TestReader` and of the analysis. */
export function importTestText(
  text: string,
  name: string,
  options: ImportOptions = {},
): Outcome<readonly TestImport[]> {
  const reader = new TestReader(name, options);
  const pushed = reader.push(text);
  if (!pushed.ok) return pushed;
  const read = reader.finish();
  return read.ok ? analyseTests(read.value, options) : read;
}
