import type * as z from "zod/mini";
import type { Read } from "../checkRecord.ts";

/** Is a value as this schema says? What is not is added to `issues`; the value stays as it is. */
export function fits<Schema extends z.ZodMiniType>(
  schema: Schema,
  value: unknown,
  issues: z.core.$ZodIssue[] = [],
): value is Read<Schema> {
  const parsed = schema.safeParse(value);
  if (!parsed.success) issues.push(...parsed.error.issues);
  return parsed.success;
}
