import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { geometryNames, geometryRegistry } from "../../src/physics/layouts/geometryRegistry.ts";
import { cornerReadings } from "../../src/physics/readings/cornerReadings.ts";
import { checkSchema } from "../../src/records/check/checkSchema.ts";
import { said } from "../../src/saying/texts.ts";
import { checkSchemaFile, checkSchemaText } from "../support/checkSchemaText.ts";

describe("the files beside the record's code", () => {
  it("check.schema.json is what the schema says now: npm run check-schema writes it", () => {
    expect(JSON.parse(readFileSync(checkSchemaFile, "utf8"))).toEqual(
      JSON.parse(checkSchemaText()),
    );
  });

  it("RECORD.md names every field, and every reading of a side", () => {
    const text = readFileSync("src/records/RECORD.md", "utf8");
    const names = [...Object.keys(checkSchema.shape), ...Object.keys(cornerReadings)];
    for (const name of names) expect(text).toContain(`\`${name}\``);
  });

  it("the schema's file tells what every reading of a layout is, and what counts without it", () => {
    const text = readFileSync(checkSchemaFile, "utf8");
    for (const name of geometryNames) {
      const told = `"${name}": {\n *"description": "${said(geometryRegistry[name].name)}, (?:mm|degrees)`;
      expect(text, name).toMatch(new RegExp(told));
    }
    expect(text).toContain(
      "; may be made of pivotHeight, outerHeight, with pivotToOuter; absent: 0",
    );
    expect(text).toContain("; absent: armAngle");
    expect(text).toContain("; absent: not measured");
  });
});
