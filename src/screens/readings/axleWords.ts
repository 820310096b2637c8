import type { ReadingWords } from "../layouts/wordedReading.ts";

export const axleWords = {
  track: (): ReadingWords => ({
    name: "Track",
    how: "From the middle of the left tire's tread (A) to the middle of the right one (B), on the ground.",
    wrong: "Measured outside to outside it is one tire's width too much.",
    a: "middle, left tire",
    b: "middle, right tire",
  }),
  stopSpacing: (): ReadingWords => ({
    name: "Spacing of the stops",
    how: "From the middle of the left stop (A) to the middle of the right one (B), straight across.",
    wrong: "Frame rail to frame rail is not the same. Measure where the rubber meets its pad.",
    a: "middle, left stop",
    b: "middle, right stop",
  }),
} as const;
