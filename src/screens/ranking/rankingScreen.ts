import { later } from "../parts/later.tsx";
import { screenWithStore } from "../screen.tsx";
import type { RankingPlaceProps } from "./RankingPlace.tsx";

/** Which stop of the pack fits the vehicle of a check. */
export const rankingScreen = screenWithStore({
  read: ({ parts: [first, id, place, more] }) =>
    first === "check" && id && place === "stops" && more === undefined
      ? { screen: "stops", id }
      : null,
  part: later<RankingPlaceProps>(async () => (await import("./RankingPlace.tsx")).default),
  props: ({ id }, { opened, preferences }) => ({ opened, id, unit: preferences.length }),
  key: ({ id }) => id,
  beside: ({ id }) => id,
});
