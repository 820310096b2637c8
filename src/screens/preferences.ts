import { useEffect, useState } from "preact/hooks";
import type { Author } from "../records/checkRecord.ts";
import type { LengthUnit } from "../records/units.ts";

export interface Preferences {
  readonly length: LengthUnit;
  readonly mass: "kg" | "lb";
  /** Who filled in the last check: offered again for the next one. */
  readonly author?: Author;
}

const key = "stopfit.preferences";

function defaultPreferences(): Preferences {
  const american = /-(US|LR|MM)$/i.test(globalThis.navigator?.language ?? "");
  return american ? { length: "in", mass: "lb" } : { length: "mm", mass: "kg" };
}

function readAuthor(value: unknown): Author | undefined {
  if (typeof value !== "object" || value === null || !("role" in value)) return undefined;
  const { role } = value;
  if (role !== "installer" && role !== "customer" && role !== "support") return undefined;
  const name = "name" in value && typeof value.name === "string" ? value.name : undefined;
  const contact =
    "contact" in value && typeof value.contact === "string" ? value.contact : undefined;
  return { role, ...(name && { name }), ...(contact && { contact }) };
}

function readPreferences(): Preferences {
  const fallback = defaultPreferences();
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    if (typeof value !== "object" || value === null) return fallback;
    const length = "length" in value ? value.length : undefined;
    const mass = "mass" in value ? value.mass : undefined;
    const author = "author" in value ? readAuthor(value.author) : undefined;
    return {
      length: length === "mm" || length === "in" ? length : fallback.length,
      mass: mass === "kg" || mass === "lb" ? mass : fallback.mass,
      ...(author && { author }),
    };
  } catch {
    return fallback;
  }
}

let current: Preferences | null = null;
const listeners = new Set<(preferences: Preferences) => void>();

/** Held in memory where the browser refuses to keep them. */
export function preferences(): Preferences {
  current ??= readPreferences();
  return current;
}

export function changePreferences(change: Partial<Preferences>): void {
  current = { ...preferences(), ...change };
  try {
    localStorage.setItem(key, JSON.stringify(current));
  } catch {
    // Refused or full: they hold until the page is closed.
  }
  for (const listener of listeners) listener(current);
}

export function usePreferences(): Preferences {
  const [value, setValue] = useState(preferences);
  useEffect(() => {
    listeners.add(setValue);
    setValue(preferences());
    return () => {
      listeners.delete(setValue);
    };
  }, []);
  return value;
}

/** Read anew from the browser, as after a reload. */
export function forgetPreferencesInMemory(): void {
  current = null;
}
