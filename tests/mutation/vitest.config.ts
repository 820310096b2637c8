import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/*
 * The tests that a mutant of one folder of src/physics meets: that folder's own, and the quick checks
 * against the outside. A mutant that only a whole assessment would notice counts as not noticed.
 */

const folder = process.env.STOPFIT_MUTATED ?? "";
const slow = ["tests/physics/road/simulatedRoad.test.ts"];
const fewerRuns = fileURLToPath(new URL("fewerRuns.ts", import.meta.url));

export default defineConfig({
  plugins: [
    {
      name: "fewer-runs",
      enforce: "pre",
      resolveId: (id, importer) =>
        id === "fast-check" && importer !== fewerRuns ? fewerRuns : undefined,
    },
  ],
  test: {
    environment: "node",
    include: [
      folder === "." ? "tests/physics/*.test.ts" : `tests/physics/${folder}/**/*.test.ts`,
      "tests/published/quickSources.test.ts",
    ],
    exclude: slow,
    isolate: false,
    testTimeout: 60_000,
  },
});
