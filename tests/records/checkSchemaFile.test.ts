import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { geometryNames } from "../../src/physics/layouts/geometryRegistry.ts";
import { cornerReadings } from "../../src/physics/readings/cornerReadings.ts";
import { checkSchema } from "../../src/records/check/checkSchema.ts";
import { checkSchemaFile, checkSchemaText } from "../support/checkSchemaText.ts";

describe("the files beside the record's code", () => {
  it("check.schema.json is what the schema says now: npm run check-schema writes it", () => {
    expect(JSON.parse(readFileSync(checkSchemaFile, "utf8"))).toEqual(
      JSON.parse(checkSchemaText()),
    );
  });

  it("RECORD.md names every field, and every reading", () => {
    const text = readFileSync("src/records/RECORD.md", "utf8");
    const names = [
      ...Object.keys(checkSchema.shape),
      ...Object.keys(cornerReadings),
      ...geometryNames,
    ];
    for (const name of names) expect(text).toContain(`\`${name}\``);
  });
});
