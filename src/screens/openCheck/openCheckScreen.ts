import { later } from "../parts/later.tsx";
import { type Address, screenWithStore } from "../screen.tsx";

/** A null step is the one that the check was left at. */
type OpenCheckRoute =
  | { readonly screen: "step"; readonly id: string; readonly step: string | null }
  | { readonly screen: "answer"; readonly id: string };

function readOpenCheckRoute({ parts }: Address): OpenCheckRoute | null {
  const [first, id, step] = parts;
  if (first !== "check" || !id || parts.length > 3 || step === null) return null;
  // The list of stops that fit it, a screen of its own.
  if (step === "stops") return null;
  return step === "answer" ? { screen: "answer", id } : { screen: "step", id, step: step ?? null };
}

export const CheckPlace = later(async () => (await import("./CheckPlace.tsx")).CheckPlace);

export const openCheckScreen = screenWithStore({
  read: readOpenCheckRoute,
  part: CheckPlace,
  props: (route, { opened, preferences }) => ({
    opened,
    id: route.id,
    place: route.screen === "answer" ? "answer" : route.step,
    preferences,
  }),
  key: ({ id }) => id,
  beside: ({ id }) => id,
  check: ({ screen, id }) => ({ id, atAnswer: screen === "answer" }),
});
