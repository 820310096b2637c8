import { later } from "../parts/later.tsx";
import { screenWithStore } from "../screen.tsx";
import type { SharePlaceProps } from "./SharePlace.tsx";
import { readShareRoute } from "./shareRoutes.ts";

export const shareScreen = screenWithStore({
  read: ({ hash }) => readShareRoute(hash),
  part: later<SharePlaceProps>(async () => (await import("./SharePlace.tsx")).default),
  props: (route, { opened, preferences, launched }) => ({
    route,
    opened,
    unit: preferences.length,
    launched,
  }),
});
