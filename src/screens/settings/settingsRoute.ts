import * as messages from "../../words/compiled/screens/settings.ts";
export interface SettingsRoute {
  readonly screen: "settings";
}

export const settingsHref = "#/settings";

export const settingsName = messages.settings;

/** "looks" was its address up to version 0.2, and stands in bookmarks. */
const places: readonly (string | null | undefined)[] = ["settings", "looks"];

export function readSettingsRoute(parts: readonly (string | null)[]): SettingsRoute | null {
  return parts.length === 1 && places.includes(parts[0]) ? { screen: "settings" } : null;
}
