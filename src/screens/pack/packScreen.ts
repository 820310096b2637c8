import { later } from "../parts/later.tsx";
import { screen } from "../screen.tsx";
import { readPackRoute } from "./packRoutes.ts";

export const packScreen = screen({
  read: ({ parts }) => readPackRoute(parts),
  part: later(async () => (await import("./PackPlace.tsx")).default),
  props: (route, { preferences }) => ({ route, unit: preferences.length }),
});
