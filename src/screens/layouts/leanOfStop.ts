import type { ReadingWords, WordedLayout } from "./wordedReading.ts";

/** From where a lean on an arm is seen. */
export function leanSeen(armRole: WordedLayout["armRole"]): string {
  return armRole === "carriesWheel" ? "from the side" : "from front or rear";
}

/** How the lean of a stop between frame and arm, or axle, is taken. */
export function leanOfStop(armRole: WordedLayout["armRole"]): ReadingWords {
  return {
    name: "Stop angle from vertical",
    how: `Between a plumb line and the line the stop is pressed along (A to B), seen ${leanSeen(armRole)}.`,
    wrong: "The bracket may lean another way. Hold the gauge along the rubber.",
    a: "where the stop lands",
    b: "along the stop",
    skipped: "Skip it and 0 is used.",
  };
}
