import { later } from "../parts/later.tsx";
import { screen } from "../screen.tsx";
import { readHowComputedRoute } from "./howComputedRoute.ts";

export const howComputedScreen = screen({
  read: ({ parts }) => readHowComputedRoute(parts),
  part: later(async () => (await import("./HowComputedPlace.tsx")).HowComputedPlace),
  props: ({ passage }) => ({ passage }),
});
