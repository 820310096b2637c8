import { resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { globSync } from "tinyglobby";
import { build } from "vite";

const here = (name) => fileURLToPath(new URL(name, import.meta.url));

/** Where the bundle stands: as deep as the tests, which find their data by their own place. */
const folder = "tests/bundle";

/**
 * Bundles tests and what they test into one module, without the packages: it can be loaded anew, all
 * of it, in a moment. Returns its address. The tests are those of the working folder, where Stryker has
 * put its mutants; this file stands outside of it.
 */
export async function bundleTests({ tests, excluded, sources }) {
  const files = globSync(tests, { ignore: excluded, absolute: true }).sort();
  const lines = [
    ...files.map((file) => `import ${JSON.stringify(file)};`),
    `import { declareComparisons } from ${JSON.stringify(here("comparisons.ts"))};`,
    ...sources.map((name, index) => {
      const file = JSON.stringify(resolve("tests/published", `${name}.ts`));
      return `import * as source${index} from ${file}; declareComparisons(source${index});`;
    }),
  ];
  const entry = "\0every-test";
  await build({
    configFile: false,
    logLevel: "error",
    plugins: [
      {
        name: "every-test",
        enforce: "pre",
        resolveId(id, importer) {
          if (id === entry || id === "every-test") return entry;
          if (id === "vitest") return here("declaredTests.ts");
          if (id === "fast-check" && !importer?.endsWith("fewerRuns.ts"))
            return here("../fewerRuns.ts");
          return undefined;
        },
        load: (id) => (id === entry ? lines.join("\n") : undefined),
      },
    ],
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: true,
      minify: false,
      target: "node20",
      rollupOptions: { input: "every-test", output: { entryFileNames: "bundle.mjs" } },
    },
  });
  return pathToFileURL(resolve(folder, "bundle.mjs")).href;
}
