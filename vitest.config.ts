import { defineConfig } from "vitest/config";
import { LongestFirst } from "./tests/support/longestFirst.ts";

/** What is shown, stored or sensed; of the screens' pure functions those that look at the page. */
const withDom = [
  "tests/screens/**/*.test.tsx",
  "tests/screens/{addresses,choosing/stopsLately,oldBrowser,pack/drafts,pack/packEdits,shell}.test.ts",
  "tests/{storage,sensors}/**/*.test.ts",
];
const inBrowser = ["tests/browser/**/*.test.ts"];
const inEngines = ["tests/engines/**/*.test.ts"];

/** No time is asserted anywhere: a machine that is busy otherwise may take so long for a test. */
const patienceMs = 300_000;

export default defineConfig({
  test: {
    // One file a core, on small machines as well; every file has its own page, store and port.
    maxWorkers: "100%",
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: "unit",
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: [...withDom, ...inBrowser, ...inEngines],
          testTimeout: patienceMs,
          // Pure functions: a process and its modules serve one file after another.
          isolate: false,
          setupFiles: ["tests/support/replacedModules.ts", "src/saying/everyText.ts"],
        },
      },
      {
        // As modules all the way, so that each file can have its own of it.
        resolve: {
          alias: {
            "@testing-library/dom": "@testing-library/dom/dist/@testing-library/dom.esm.js",
          },
        },
        oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
        test: {
          name: "component",
          // Each file makes itself a page (ownPage.ts), before anything that looks at it is loaded.
          environment: "node",
          isolate: false,
          include: withDom,
          testTimeout: patienceMs,
          sequence: { setupFiles: "list" },
          server: { deps: { inline: [/preact/, /@testing-library/, /fake-indexeddb/, /\/idb\//] } },
          setupFiles: [
            "tests/support/ownPage.ts",
            "tests/support/patience.ts",
            "tests/support/messagesSaid.ts",
            "src/saying/everyText.ts",
          ],
        },
      },
      {
        test: {
          name: "browser",
          environment: "node",
          include: inBrowser,
          isolate: false,
          globalSetup: ["tests/browser/support/build.ts"],
          setupFiles: ["src/saying/everyText.ts"],
          testTimeout: patienceMs,
          hookTimeout: 180_000,
        },
      },
      {
        test: {
          name: "engines",
          environment: "node",
          include: inEngines,
          globalSetup: ["tests/engines/support/build.ts"],
          setupFiles: ["src/saying/everyText.ts"],
          testTimeout: 400_000,
          hookTimeout: 180_000,
        },
      },
    ],
    coverage: { provider: "v8", include: ["src/physics/**"] },
  },
});
