import { later } from "../parts/later.tsx";
import { screen } from "../screen.tsx";
import { readSettingsRoute } from "./settingsRoute.ts";

export const settingsScreen = screen({
  read: ({ parts }) => readSettingsRoute(parts),
  part: later(async () => (await import("./SettingsPlace.tsx")).SettingsPlace),
  props: (_, { preferences }) => ({ preferences }),
});
