import * as messages from "../../words/compiled/screens/saved.ts";
export interface SavedRoute {
  readonly screen: "saved";
}

export const savedHref = "#/saved";

export const savedName = messages.savedBackup;

/** "kept" was its address up to version 0.2, and stands in bookmarks. */
const places: readonly (string | null | undefined)[] = ["saved", "kept"];

export function readSavedRoute(parts: readonly (string | null)[]): SavedRoute | null {
  return parts.length === 1 && places.includes(parts[0]) ? { screen: "saved" } : null;
}
