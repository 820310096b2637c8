import * as z from "zod/mini";
import { readingSources } from "../../../physics/choices.ts";
import * as messages from "../../../words/compiled/records/check/schema.ts";
import { recordBounds } from "../recordFormat.ts";

const { labelCharacters, magnitude, notesCharacters, repeats, typedCharacters } = recordBounds;

/** A field that may be absent; where it is there, it is not undefined. */
export const may = z.exactOptional;

/** Every field of a group absent or there. */
export function allMay<Fields extends z.core.$ZodLooseShape>(
  fields: Fields,
): { [Name in keyof Fields]: z.ZodMiniExactOptional<Fields[Name]> } {
  const optional = Object.entries(fields).map(([name, field]) => [name, may(field)]);
  return Object.fromEntries(optional) as {
    [Name in keyof Fields]: z.ZodMiniExactOptional<Fields[Name]>;
  };
}

export const numberSchema = z.number().check(z.gte(-magnitude), z.lte(magnitude));
export const positiveOrZero = numberSchema.check(z.gte(0));
export const label = z.string().check(z.maxLength(labelCharacters));
export const filledLabel = label.check(z.regex(/\S/, messages.mustNotBeEmpty.code));
export const notes = z.string().check(z.maxLength(notesCharacters));

/** ISO 8601 in UTC, and a day that exists. */
function isUtcTime(text: string): boolean {
  const match = /^(\d{4}-\d{2}-\d{2})T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:Z|\+00:00)$/.exec(
    text,
  );
  if (match === null) return false;
  const time = Date.parse(text);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(match[1] ?? "?");
}

export const instantSchema = z.string().check(z.refine(isUtcTime, messages.isNotDateAnd.code));

export const readingSchema = z.object({
  /** Repeats of one measurement: mm, deg or kg. */
  values: z.array(numberSchema).check(z.minLength(1), z.maxLength(repeats)),
  /** The tool's ± half-width. */
  tol: positiveOrZero,
  /** What the person typed for each repeat, such as "2 5/16 in". */
  typed: may(z.array(z.string().check(z.maxLength(typedCharacters))).check(z.maxLength(repeats))),
  /** What it was measured with, and how well that got at it: a ToolId and a Reach. */
  tool: may(label),
  reach: may(label),
  /** Who says so; absent: it was measured. */
  source: may(z.enum(readingSources)),
  /** Who took it. */
  by: may(label),
});
