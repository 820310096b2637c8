export interface KeptRoute {
  readonly screen: "kept";
}

export const keptHref = "#/kept";

export const keptName = "Kept on this phone";

export function readKeptRoute(parts: readonly (string | null)[]): KeptRoute | null {
  return parts.length === 1 && parts[0] === "kept" ? { screen: "kept" } : null;
}
