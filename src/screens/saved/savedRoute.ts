export interface SavedRoute {
  readonly screen: "saved";
}

export const savedHref = "#/kept";

export const keptName = "Kept on this phone";

export function readSavedRoute(parts: readonly (string | null)[]): SavedRoute | null {
  return parts.length === 1 && parts[0] === "kept" ? { screen: "saved" } : null;
}
