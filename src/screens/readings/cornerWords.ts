import { layoutRegistry } from "../../physics/readings/index.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";

function landingOf({ kind, stopOn }: WordedLayout): string {
  const { landing, landingOfStopOnArm = landing } = layoutsOnScreen[kind].words;
  return stopOn === "arm" ? landingOfStopOnArm : landing;
}

const onARod = ({ kind }: WordedLayout): boolean => layoutRegistry[kind].onRod;

const words: { readonly [name: string]: (layout: WordedLayout) => ReadingWords } = {
  gap: (layout) =>
    onARod(layout)
      ? {
          name: "Gap",
          how: `Along the rod, from the stop's lower end (A) to the ${landingOf(layout)} (B).`,
          wrong:
            "A dust boot hides the stop's end. Slide it up. With the wheel off the ground the gap is too long.",
          a: "end of the stop",
          b: landingOf(layout),
        }
      : {
          name: "Gap",
          how: "Along the stop's own axis, from the tip of the rubber (A) to the pad that it lands on (B).",
          wrong:
            "Straight up is too short where the stop leans. With the wheel off the ground it is too long.",
          a: "end of the stop",
          b: landingOf(layout),
        },
  pressedHeight: (layout) => ({
    name: "Height of the pressed stop",
    how: `The stop's height as it stands now, pressed: from its seat (A) to the ${landingOf(layout)} (B).`,
    wrong: "The stud and the steel plate are not part of it. Leave the vehicle on its wheels.",
    a: "seat of the stop",
    b: landingOf(layout),
  }),
  seatToPad: (layout) => ({
    name: "Seat to pad, without a stop",
    how: `Along the stop's axis, from where a stop would be seated (A) to the ${landingOf(layout)} (B).`,
    wrong: "Not straight up where the stop would lean. Leave out what is left of a ruined stop.",
    a: "seat of the stop",
    b: landingOf(layout),
  }),
  rideHeight: () => ({
    name: "Ride height",
    how: "To compare left with right: from the wheel center (A) straight up to the fender's edge (B).",
    wrong: "A tilted floor makes one side short. Use the level place.",
    a: "wheel center",
    b: "edge of the fender",
    skipped: "It can be skipped.",
  }),
  cornerMassKg: () => ({
    name: "Weight on this wheel",
    how: "Wheel scale under this tire, the others on blocks of the same height, vehicle as it is used.",
    wrong: "With one wheel lifted by the scale alone the reading comes out too high.",
    a: "",
    b: "",
  }),
  "stop.freeHeight": () => ({
    name: "Free height of the stop",
    how: "Height of the rubber alone with nothing pressing on it, from its seat (A) to its tip (B).",
    wrong: "The stud and the steel plate are not part of it.",
    a: "base of the stop",
    b: "tip of the stop",
  }),
  "stop.usableCompressionMm": () => ({
    name: "Usable compression",
    how: "How far the stop can be pressed before it is solid: free height less the height fully compressed.",
    wrong: "Not the whole height: a stop never goes flat.",
    a: "tip, pressed",
    b: "tip, free",
  }),
};

/** A reading that is no geometry, by its name without the side; undefined: no screen asks for it. */
export function cornerWords(name: string, layout: WordedLayout): ReadingWords | undefined {
  return Object.hasOwn(words, name) ? words[name]?.(layout) : undefined;
}
