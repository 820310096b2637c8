import { existsSync, mkdtempSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, normalize } from "node:path";

/** The folder whose mutants are tried, of src/physics where no other room is named; "." for the files beside its folders. */
const folder = process.env.STOPFIT_MUTATED ?? ".";
const isDoor = /^(records|sharing|storage|compute)/.test(folder);
const place = isDoor ? folder : `physics/${folder}`;
const file = process.env.STOPFIT_MUTATED_FILE;
const mutated = file ?? (folder === "." ? "*.ts" : "**/*.ts");
const reports = process.env.STOPFIT_MUTATION_REPORTS ?? join(tmpdir(), "stopfit-mutation");
const name = (file ?? (folder === "." ? "whole" : folder)).replaceAll("/", "-");

/** Files of tests/published that are about a folder. */
const sources = {
  estimates: ["gent1958", "lindley", "shigleyCoilSpring"],
  impact: ["dormandPrince", "droppedWeight", "springDashpotContact"],
  road: ["dahlberg1978", "iso8608", "rice1944"],
  stop: ["iso3", "scipyPchip"],
  stopTests: ["barlow1972", "harmonicLoop"],
  uncertainty: ["jcgm100", "xoshiro128starstar"],
};

const folderTests = folder === "." ? "tests/physics/*.test.ts" : `tests/${place}/**/*.test.ts`;
/** A file that is asked for alone, and has tests that begin with its name, meets those alone. */
const stem = file?.replace(/\.ts$/, "");
const isOfFile = (test) => stem !== undefined && test.startsWith(stem) && /\.test\.ts$/.test(test);
const besides = existsSync(`tests/${place}`) ? readdirSync(`tests/${place}`) : [];
const ownTests = besides.some(isOfFile) ? `tests/${place}/${stem}*.test.ts` : folderTests;
/** Where the tests of a folder or file stand that has none beside it. */
const wordsOfFaults = "tests/records/check/readCheck.test.ts";
const ofStorage = (...names) => names.map((each) => `tests/storage/${each}.test.ts`);
const tests = {
  "records/text": [ownTests, wordsOfFaults],
  "records/text/faultWords.ts": [ownTests, wordsOfFaults],
  "storage/addSubmission.ts": ofStorage("deskStore*", "sharedCopyTold"),
  "storage/checkRow.ts": ofStorage("checkRow", "damagedRows"),
  "storage/checkStore.ts": ofStorage("checkStore*", "damagedRows"),
  "storage/database.ts": ofStorage("database", "packStore", "versions"),
  "storage/deskDatabase.ts": ofStorage("deskDatabase", "deskInbox", "sharedCopy", "versions"),
  "storage/joinedRows.ts": ofStorage("joinedRows", "damagedRows"),
  "storage/joining.ts": ofStorage("checkStore"),
  "storage/outboxDatabase.ts": ofStorage("outboxDatabase", "outboxStore"),
  "storage/restoreBackup.ts": ofStorage("restoreBackup", "backup"),
  "storage/sharedParts.ts": ofStorage("sharedParts", "sharedCopy"),
  "storage/surveyBackup.ts": ofStorage("surveyBackup", "backup"),
  "storage/takeIn.ts": ofStorage("takeIn", "backup"),
  "storage/waitingRows.ts": ofStorage("leftPage", "damagedRows", "checkStore", "checkStoreAway"),
};

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  testRunner: "in-process",
  plugins: ["./tests/mutation/inProcess/runner.mjs"],
  inProcess: {
    // A folder's mutants meet its own tests and the quick checks against the outside.
    tests: tests[file === undefined ? folder : `${folder}/${file}`] ?? ownTests,
    // Whole assessments by the hundred are left to the test suite.
    excluded: [
      "tests/physics/road/simulatedRoad.test.ts",
      "tests/physics/remeasure/planAgainstDoing.test.ts",
      "tests/physics/remeasure/planProperties.test.ts",
      // Pictures of codes by the hundred, faults by the thousand.
      "tests/sharing/codeReading.test.ts",
      "tests/storage/faults.test.ts",
    ],
    needsWindow: folder === "storage",
    sources: sources[folder] ?? [],
    // Of these files something is kept from one call to the next, which would outlive a mutant.
    loadAnew: ["uncertainty/standardDraws.ts", "uncertainty/randomSource.ts", "storage/joining.ts"],
  },
  mutate: [normalize(`src/${place}/${mutated}`)],
  ignorePatterns: [
    "dist",
    "coverage",
    "public",
    "tests/screenshots",
    "tests/browser",
    "tests/screens",
  ],
  // TypeScript 7 has no interface that Stryker could read the tsconfig with, and nothing here needs it.
  tsconfigFile: "none",
  coverageAnalysis: "perTest",
  concurrency: 1,
  timeoutMS: 10_000,
  tempDirName: mkdtempSync(join(tmpdir(), "stopfit-mutants-")),
  reporters: ["json"],
  jsonReporter: { fileName: join(reports, `${name}.json`) },
  warnings: { slow: false },
};
