import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { compiledFolder, readCatalogue } from "./catalogue.ts";
import { compiledCatalogue } from "./compiledCatalogue.ts";

/* npm run words: the catalogue of src/words/en as modules that the app imports. */

rmSync(compiledFolder, { recursive: true, force: true });
for (const [path, code] of compiledCatalogue(readCatalogue())) {
  const file = join(compiledFolder, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, code);
}
