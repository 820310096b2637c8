export interface SettingsRoute {
  readonly screen: "settings";
}

const place = "looks";

export const settingsHref = `#/${place}`;

export const settingsName = "Settings";

export function readSettingsRoute(parts: readonly (string | null)[]): SettingsRoute | null {
  return parts.length === 1 && parts[0] === place ? { screen: "settings" } : null;
}
