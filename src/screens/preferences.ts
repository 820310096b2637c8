import { useEffect, useState } from "preact/hooks";
import { onPhoneTheme, showAppearance } from "./appearance.ts";
import {
  authorNow,
  type Preferences,
  preferencesKey,
  readPreferences,
} from "./storedPreferences.ts";

export type { Preferences } from "./storedPreferences.ts";

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
    localStorage.setItem(preferencesKey, JSON.stringify(current));
  } catch {
    // Refused or full: they hold until the page is closed.
  }
  showAppearance(current);
  for (const listener of listeners) listener(current);
}

/** The name of who measures now; null where none is said. */
export function measurerNow(): string | null {
  return authorNow(preferences())?.name?.trim() || null;
}

/** Keeps the page looking as wanted: after the phone turns dark, and a change in another tab. */
export function followAppearance(): void {
  onPhoneTheme(() => showAppearance(preferences()));
  window.addEventListener("storage", ({ key }) => {
    if (key !== preferencesKey && key !== null) return;
    current = readPreferences();
    showAppearance(current);
    for (const listener of listeners) listener(current);
  });
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
