import type { LimitKind } from "../../physics/fitment.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ReadingWords, WordedLayout, WordedLimit } from "../layouts/wordedReading.ts";

/** What touches, as it is ticked. */
export const limitTitles: { readonly [Kind in LimitKind]: string } = {
  tyre: "Tire on the fender",
  damper: "Shock at its end",
  spring: "Spring coils closed",
  metal: "Metal on metal",
  other: "Something else",
};

const clearances: { readonly [Kind in LimitKind]: Omit<ReadingWords, "a" | "b"> } = {
  tyre: {
    name: "Clearance over the tire",
    how: "From the tire's tread (A) straight up to the first thing that it would touch (B).",
    wrong: "Turn the steering from lock to lock, chains on where they are used: the least counts.",
  },
  damper: {
    name: "Shock travel left",
    how: "Bare rod from the top of the shock's body (A) to what ends its travel (B).",
    wrong: "A boot hides the end of the rod.",
  },
  spring: {
    name: "Spring travel left",
    how: "The height now (B) less the height with all coils touching (A): add up the clear spaces between the coils.",
    wrong: "Coils that touch already no longer move: leave those spaces out.",
  },
  metal: {
    name: "Metal clearance",
    how: "From the part that moves (A) straight to the metal that it would hit first (B).",
    wrong: "Brake lines, wires and exhaust count as well. Look from the front and from behind.",
  },
  other: {
    name: "Other clearance",
    how: "From the part that moves (A) straight to what it would touch first (B).",
    wrong: "Write down what it is in the notes, so that the next person finds it.",
  },
};

const ends: { readonly [Kind in LimitKind]: (layout: WordedLayout) => readonly [string, string] } =
  {
    tyre: () => ["top of the tire", "what it would touch"],
    damper: () => ["top of the body", "where the rod ends"],
    spring: () => ["coils touching", "as it stands"],
    metal: ({ kind }) => [layoutsOnScreen[kind].words.movingMetal, "frame above it"],
    other: () => ["the moving part", "what it would touch"],
  };

const closings: { readonly [Kind in LimitKind]: string } = {
  tyre: "when the tire touches",
  damper: "when the shock is at its end",
  spring: "when the coils touch",
  metal: "when metal meets metal: often at the cup's rim",
  other: "when the two touch",
};

/** Room over the tread by classes of snow chains (SAE classes S, U and W). */
const chainRoom =
  "Snow chains? Take off their room over the tread. Class S needs 1 1/2 in (37 mm), U 2 in (50 mm), W 2 1/2 in (64 mm).";

/** A clearance by where it is measured: at the part itself over the wheel, on the arm, at the stop. */
export function limitWords({ kind, at }: WordedLimit, layout: WordedLayout): ReadingWords {
  const clearance = clearances[kind];
  if (at === "stop") {
    return {
      name: `${clearance.name}, at the stop`,
      how: `How much the gap at the stop will have closed ${closings[kind]}.`,
      wrong: "Count from how it stands now, not from the tip of the stop.",
      a: "the stop's pad now",
      b: "the same, at contact",
    };
  }
  const [a, b] = ends[kind](layout);
  return at === "arm"
    ? {
        ...clearance,
        a,
        b,
        note: "It closes as the arm swings: what is further out closes faster.",
      }
    : { ...clearance, a, b, ...(kind === "tyre" && { note: chainRoom }) };
}

export const distanceWords: ReadingWords = {
  name: "Where on the arm",
  how: "Square from the arm's pivot line (A) out to where that clearance was measured (B).",
  wrong: "Not from one bolt: square from the line through both.",
  a: "pivot line",
  b: "where it would touch",
};
