import { type Outcome, succeed } from "../../physics/outcome.ts";
import { analyseCycles } from "../../physics/stopTests/analyseCycles.ts";
import { analyseRows } from "../../physics/stopTests/analyseRows.ts";
import type { ImportOptions, ReadTest, TestImport, TestQuantity } from "./testFile.ts";
import { TestReader } from "./testReader.ts";
import { testUnitFactor } from "./testUnits.ts";

/** A test that was read, analysed by its kind. Errors: those of `analyseRows` and `analyseCycles`. */
export function analyseTest(
  { file, test }: ReadTest,
  options: ImportOptions = {},
): Outcome<TestImport> {
  const factor = (quantity: TestQuantity): number => {
    const column = file.columns.find((each) => each.quantity === quantity);
    return column === undefined ? 1 : testUnitFactor(column.unit);
  };
  const slow =
    options.staticSpeedMmPerS === undefined ? {} : { staticSpeedMmPerS: options.staticSpeedMmPerS };
  const depth = factor("depth");
  const force = factor("force");
  const analysis =
    test.kind === "rows"
      ? analyseRows(test, { ...slow, factors: { depth, speed: factor("speed"), force } })
      : analyseCycles(test, { ...slow, factors: { displacement: depth, force } });
  return analysis.ok ? succeed({ file, analysis: analysis.value }) : analysis;
}

/** A test file from its whole text. Errors: those of `TestReader` and of the analysis. */
export function importTestText(
  text: string,
  name: string,
  options: ImportOptions = {},
): Outcome<TestImport> {
  const reader = new TestReader(name, options);
  const pushed = reader.push(text);
  if (!pushed.ok) return pushed;
  const read = reader.finish();
  return read.ok ? analyseTest(read.value, options) : read;
}
