import { later } from "../parts/later.tsx";
import { screen } from "../screen.tsx";
import type { DeskPlaceProps } from "./DeskPlace.tsx";
import { readDeskRoute } from "./deskRoutes.ts";

export const DeskPlace = later<DeskPlaceProps>(
  async () => (await import("./DeskPlace.tsx")).DeskPlace,
);

export const deskScreen = screen({
  read: ({ parts: [first, ...parts] }) => {
    const desk = first === "desk" ? readDeskRoute(parts.map((part) => part ?? "")) : null;
    return desk && { screen: "desk", desk };
  },
  part: DeskPlace,
  props: ({ desk }, { preferences }) => ({ route: desk, unit: preferences.length }),
});
