import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { compiledFolder, readCatalogue } from "./catalogue.ts";
import { wordsModule } from "./compileWords.ts";

/* npm run words: the catalogue of src/words/en as modules that screens import. */

rmSync(compiledFolder, { recursive: true, force: true });
for (const [room, messages] of readCatalogue()) {
  const file = join(compiledFolder, `${room}.ts`);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, wordsModule(messages));
}
