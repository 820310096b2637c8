import { readFileSync, writeFileSync } from "node:fs";
import { sources } from "./sources.ts";
import { trustTable, withTable } from "./support/trustTable.ts";

const path = new URL("README.md", import.meta.url);
writeFileSync(path, withTable(readFileSync(path, "utf8"), trustTable(sources)));
process.stdout.write("tests/published/README.md has the table of what was computed just now.\n");
