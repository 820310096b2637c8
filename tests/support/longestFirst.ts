import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, the longest first: begun last, one of them would hold up a core alone. */
const longest = [
  "browser/faultsKilled",
  "browser/demo",
  "browser/faults",
  "browser/keeping",
  "browser/door",
  "browser/sending",
  "browser/hands",
  "browser/wholeCheck",
  "browser/otherLanguage",
  "browser/screensOfDamper",
  "browser/deskHold",
  "browser/screensOfArm",
  "browser/themes",
  "browser/offline",
  "engines/webkit",
  "engines/firefox",
  "server/threeNodes",
  "physics/prescription/prescribe",
  "physics/ranking/rankStops",
  "physics/prescription/screening",
  "screens/drawings/ReadingDrawing",
  "screens/answer/AnswerScreen",
].map((name) => `/tests/${name}.test.ts`);

function place({ moduleId }: TestSpecification): number {
  const found = longest.findIndex((path) => moduleId.includes(path));
  return found < 0 ? longest.length : found;
}

/** Of test files as vitest would take them, those known to be long come first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    return usual.toSorted((one, other) => place(one) - place(other));
  }
}
