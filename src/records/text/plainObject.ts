/** A group of named fields, as JSON has it: no list, no null. */
export type PlainObject = { readonly [name: string]: unknown };

export function isPlainObject(value: unknown): value is PlainObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** One value for each of these names. */
export function eachOf<Name extends string, Value>(
  names: readonly Name[],
  value: Value,
): { [Each in Name]: Value } {
  return Object.fromEntries(names.map((name) => [name, value])) as { [Each in Name]: Value };
}
