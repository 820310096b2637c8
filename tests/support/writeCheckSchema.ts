import { writeFileSync } from "node:fs";
import "../../src/saying/everyText.ts";
import { checkSchemaFile, checkSchemaText } from "./checkSchemaText.ts";

writeFileSync(checkSchemaFile, checkSchemaText());
