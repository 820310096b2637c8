/** A group of named fields, as JSON has it: no list, no null. */
export type PlainObject = { readonly [name: string]: unknown };

export function isPlainObject(value: unknown): value is PlainObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
