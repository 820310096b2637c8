import { isPlainObject } from "./plainObject.ts";

/** What of a stored value can be what it says; undefined where nothing can. */
export type Keep<Value> = (value: unknown) => Value | undefined;

/** How each field of a group is salvaged. A field that is forgotten is a type error. */
export type Fields<Shape> = {
  readonly [Name in keyof Shape]-?: Keep<Exclude<Shape[Name], undefined>>;
};

export const text: Keep<string> = (value) => (typeof value === "string" ? value : undefined);

export const number: Keep<number> = (value) =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;

export const flag: Keep<boolean> = (value) => (typeof value === "boolean" ? value : undefined);

export function oneOf<Value extends string | number>(...values: readonly Value[]): Keep<Value> {
  return (value) => values.find((each) => each === value);
}

export function nullOr<Value>(keep: Keep<Value>): Keep<Value | null> {
  return (value) => (value === null ? null : keep(value));
}

/** A list without those of its items that can't be. */
export function listOf<Value>(keep: Keep<Value>): Keep<readonly Value[]> {
  return (value) => {
    if (!Array.isArray(value)) return undefined;
    return value.map(keep).filter((item) => item !== undefined);
  };
}

/** A list, or nothing where one of its items can't be. */
export function wholeList<Value>(keep: Keep<Value>): Keep<readonly Value[]> {
  return (value) => {
    const kept = listOf(keep)(value);
    return Array.isArray(value) && kept?.length === value.length ? kept : undefined;
  };
}

/** Those fields of a group that can be; what it has beside them stays as it is. */
export function group<Shape extends object>(fields: Fields<Shape>): Keep<Partial<Shape>> {
  const known: { readonly [name: string]: Keep<unknown> } = fields;
  return (value) => {
    if (!isPlainObject(value)) return undefined;
    const kept = Object.entries(value).flatMap(([name, item]) => {
      if (!Object.hasOwn(known, name)) return [[name, item] as const];
      const sound = known[name]?.(item);
      return sound === undefined ? [] : [[name, sound] as const];
    });
    return Object.fromEntries(kept) as Partial<Shape>;
  };
}

/** The same, or nothing where one of the fields named is not there. */
export function whole<Shape extends object, Name extends keyof Shape>(
  fields: Fields<Shape>,
  needed: readonly Name[],
): Keep<Partial<Shape> & Pick<Shape, Name>> {
  const keep = group<Shape>(fields);
  const has = (kept: Partial<Shape>): kept is Partial<Shape> & Pick<Shape, Name> =>
    needed.every((name) => kept[name] !== undefined);
  return (value) => {
    const kept = keep(value);
    return kept !== undefined && has(kept) ? kept : undefined;
  };
}
