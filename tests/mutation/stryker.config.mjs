import { tmpdir } from "node:os";
import { join } from "node:path";

const folder = process.env.STOPFIT_MUTATED ?? "";
const reports = process.env.STOPFIT_MUTATION_REPORTS ?? join(tmpdir(), "stopfit-mutation");

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: true },
  mutate: [folder === "." ? "src/physics/*.ts" : `src/physics/${folder}/**/*.ts`],
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
  timeoutMS: 15_000,
  tempDirName: join(tmpdir(), `stopfit-mutation-${process.pid}`),
  reporters: ["json"],
  jsonReporter: { fileName: join(reports, `${folder === "." ? "whole" : folder}.json`) },
  warnings: { slow: false },
  thresholds: { high: 95, low: 90, break: null },
};
