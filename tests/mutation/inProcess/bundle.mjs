import { relative, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { globSync } from "tinyglobby";
import { build } from "vite";

const here = (name) => fileURLToPath(new URL(name, import.meta.url));

/** Where the bundle stands. */
const folder = "tests/bundle";

/**
 * Bundles tests and what they test into one module, without the packages: it can be loaded anew, all
 * of it, in a moment. Returns its address. The tests are those of the working folder, where Stryker has
 * put its mutants; this file stands outside of it.
 */
export async function bundleTests({ tests, excluded, sources }) {
  const files = globSync(tests, { ignore: excluded, absolute: true }).sort();
  // A file's hooks are around its own tests alone: each is begun before it is loaded.
  const begun = (file) => `\0begin:${file}`;
  const lines = [
    // The texts of messages, as the test run's own set-up has them.
    `import ${JSON.stringify(resolve("src/saying/everyText.ts"))};`,
    ...files.flatMap((file) => [
      `import ${JSON.stringify(begun(file))};`,
      `import ${JSON.stringify(file)};`,
    ]),
    `import ${JSON.stringify(begun("published"))};`,
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
          if (id.startsWith("\0begin:")) return { id, moduleSideEffects: true };
          if (id === "vitest") return here("declaredTests.ts");
          if (id === "fast-check" && !importer?.endsWith("fewerRuns.ts"))
            return here("../fewerRuns.ts");
          return undefined;
        },
        // A module finds its data by its own place, not by the bundle's.
        transform(code, id) {
          if (!code.includes("import.meta.url")) return undefined;
          return code.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(id).href));
        },
        load(id) {
          if (id === entry) return lines.join("\n");
          if (!id.startsWith("\0begin:")) return undefined;
          const name = JSON.stringify(relative(process.cwd(), id.slice(7)));
          return `import { beginFile } from ${JSON.stringify(here("declaredTests.ts"))}; beginFile(${name});`;
        },
      },
    ],
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: true,
      minify: false,
      target: "node20",
      rollupOptions: {
        input: "every-test",
        output: { entryFileNames: "bundle.mjs" },
        // Tests are loaded for what they do alone.
        treeshake: false,
      },
    },
  });
  return pathToFileURL(resolve(folder, "bundle.mjs")).href;
}
