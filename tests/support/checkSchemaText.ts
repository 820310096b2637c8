import * as z from "zod/mini";
import { cornerReadings } from "../../src/physics/readings/cornerReadings.ts";
import {
  definitionOf,
  geometryRegistry,
  isGeometryReadingName,
  rideQuantities,
  ruleValueNames,
  stopNumberNames,
  type ValueKind,
} from "../../src/physics/readings/index.ts";
import { checkSchema } from "../../src/records/check/checkSchema.ts";
import { said } from "../../src/saying/texts.ts";

export const checkSchemaFile = "src/records/check.schema.json";

const units: { readonly [Kind in ValueKind]: string } = {
  length: ", mm",
  angle: ", degrees",
  mass: ", kg",
  rate: ", N/mm",
  damping: ", N·s/mm",
  force: ", N",
  roadSpeed: ", km/h",
  contactRate: ", 1/km",
  number: "",
};

const plainValues: ReadonlySet<string> = new Set([
  ...Object.keys(cornerReadings),
  "freeHeight",
  ...stopNumberNames,
  ...rideQuantities,
  ...ruleValueNames,
]);

/** What a field holds, where it is a value that is defined once. */
function descriptionOf(field: string): string | null {
  const isGeometry = isGeometryReadingName(field);
  const value = isGeometry || plainValues.has(field) ? definitionOf(field) : null;
  if (value === null) return null;
  const told = `${said(value.name)}${units[value.kind]}`;
  return isGeometry ? `${told}${geometryRest(geometryRegistry[field])}` : told;
}

function geometryRest({
  use,
  madeOf,
  standIn,
  noDefault,
}: (typeof geometryRegistry)[keyof typeof geometryRegistry]): string {
  const parts = madeOf === undefined ? [] : [...madeOf.common, ...madeOf.own];
  const along = madeOf?.by === "heights" ? `, with ${madeOf.along}` : "";
  const made = madeOf === undefined ? "" : `; may be made of ${parts.join(", ")}${along}`;
  if (use === "part") return "; only another reading is made of it";
  if (use === "needed") return made;
  return `${made}; absent: ${noDefault === true ? "not measured" : (standIn ?? "0")}`;
}

/** The same schema, its values told. */
function described(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(described);
  if (typeof node !== "object" || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => [
      key,
      key === "properties" ? describedFields(value) : described(value),
    ]),
  );
}

function describedFields(fields: object): object {
  return Object.fromEntries(
    Object.entries(fields).map(([field, value]) => {
      const description = descriptionOf(field);
      const inner = described(value) as object;
      return [field, description === null ? inner : { description, ...inner }];
    }),
  );
}

/**
 * The JSON Schema of a check record, from the schema that the app reads records with, and what each value is
 * from its definition. What only a sentence can tell (how the stop stands) stands in RECORD.md beside it.
 */
export function checkSchemaText(): string {
  const schema = z.toJSONSchema(checkSchema, {
    io: "input",
    target: "draft-2020-12",
    unrepresentable: "any",
    reused: "ref",
  });
  const whole = { title: "Stopfit check record, version 2", ...schema };
  return `${JSON.stringify(described(whole), null, 1)}\n`;
}
