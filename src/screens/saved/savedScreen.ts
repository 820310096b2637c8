import { later } from "../parts/later.tsx";
import { screenWithStore } from "../screen.tsx";
import { readSavedRoute } from "./savedRoute.ts";

export const savedScreen = screenWithStore({
  read: ({ parts }) => readSavedRoute(parts),
  part: later(async () => (await import("./SavedPlace.tsx")).SavedPlace),
  props: (_, { opened }) => ({ opened }),
});
