import { later } from "../parts/later.tsx";
import { screenWithStore } from "../screen.tsx";
import { QuickCheckWaiting } from "./QuickCheckIntro.tsx";
import type { QuickCheckPlaceProps } from "./QuickCheckPlace.tsx";
import { readQuickCheckRoute } from "./quickCheckRoutes.ts";

export const QuickCheckPlace = later<QuickCheckPlaceProps>(
  async () => (await import("./QuickCheckPlace.tsx")).default,
  { waiting: QuickCheckWaiting },
);

export const quickCheckScreen = screenWithStore({
  read: ({ parts }) => readQuickCheckRoute(parts),
  part: QuickCheckPlace,
  props: ({ stage }, { opened, preferences }) => ({ opened, stage, unit: preferences.length }),
  waiting: ({ stage }) => <QuickCheckWaiting stage={stage} />,
});
