import type { StoredCheck } from "../records/check/storedCheck.ts";
import { isPlainObject } from "../records/text/plainObject.ts";

/** Deep equality of plain data. */
export function isSame(first: unknown, second: unknown): boolean {
  if (Object.is(first, second)) return true;
  if (typeof first !== "object" || typeof second !== "object") return false;
  if (first === null || second === null || Array.isArray(first) !== Array.isArray(second)) {
    return false;
  }
  const firstEntries = Object.entries(first);
  const others = second as { readonly [key: string]: unknown };
  return (
    firstEntries.length === Object.keys(second).length &&
    firstEntries.every(([key, value]) => Object.hasOwn(others, key) && isSame(value, others[key]))
  );
}

/** What a person put into a check, without what the store counts beside it. */
export function contentOf({
  revision: _revision,
  updatedAt: _updatedAt,
  ...content
}: StoredCheck): unknown {
  return content;
}

function isSide(item: unknown): boolean {
  return isPlainObject(item) && item.side !== undefined;
}

/** Sides of a vehicle, in whatever order; where none was measured yet, those that come are. */
function areSides(current: readonly unknown[], next: unknown): boolean {
  if (current.length > 0) return current.some(isSide);
  return Array.isArray(next) && next.every(isSide);
}

/** Does `next` have everything that `current` has, as it is there? Then nothing is replaced. */
function holdsAll(next: unknown, current: unknown): boolean {
  if (isPlainObject(current)) {
    return (
      isPlainObject(next) &&
      Object.entries(current).every(
        ([key, value]) =>
          value === undefined || (Object.hasOwn(next, key) && holdsAll(next[key], value)),
      )
    );
  }
  if (Array.isArray(current) && areSides(current, next)) {
    const others: unknown[] = Array.isArray(next) ? next : [];
    return current.every((item: unknown) =>
      others.some(
        (other) =>
          isPlainObject(other) &&
          isPlainObject(item) &&
          other.side === item.side &&
          holdsAll(other, item),
      ),
    );
  }
  return isSame(next, current);
}

/** Would `next` in the place of `current` lose something that a person chose or typed? */
export function replacesSomething(current: StoredCheck, next: StoredCheck): boolean {
  const typed = Object.fromEntries(
    Object.entries(current.entries).filter(([, { texts }]) => texts.some((text) => text.trim())),
  );
  return !(
    holdsAll(next.record, current.record) &&
    holdsAll(next.entries, typed) &&
    holdsAll(next.choices, current.choices) &&
    (current.name === next.name || current.name === "")
  );
}
