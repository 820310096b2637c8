import { writeFileSync } from "node:fs";
import { checkSchemaFile, checkSchemaText } from "./checkSchemaText.ts";

writeFileSync(checkSchemaFile, checkSchemaText());
