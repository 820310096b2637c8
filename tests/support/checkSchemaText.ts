import * as z from "zod/mini";
import { checkSchema } from "../../src/records/check/checkSchema.ts";

export const checkSchemaFile = "src/records/check.schema.json";

/**
 * The JSON Schema of a check record, from the schema that the app reads records with. What only a
 * sentence can tell (how the stop stands, lengths made of others) stands in RECORD.md beside it.
 */
export function checkSchemaText(): string {
  const schema = z.toJSONSchema(checkSchema, {
    io: "input",
    target: "draft-2020-12",
    unrepresentable: "any",
    reused: "ref",
  });
  return `${JSON.stringify({ title: "Stopfit check record, version 2", ...schema }, null, 1)}\n`;
}
