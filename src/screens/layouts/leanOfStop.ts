import * as messages from "../../words/compiled/screens/layouts.ts";
import type { ReadingWords, WordedLayout } from "./wordedReading.ts";

/** From where a lean on an arm is seen. */
export function leanSeen(armRole: WordedLayout["armRole"]): string {
  return armRole === "carriesWheel" ? messages.fromSide : messages.fromFrontOrRear;
}

/** How the lean of a stop between frame and arm, or axle, is taken. */
export function leanOfStop(armRole: WordedLayout["armRole"]): ReadingWords {
  return {
    name: messages.stopAngleFromVertical,
    how: messages.betweenPlumbLineAndLine({ leanSeen: leanSeen(armRole) }),
    wrong: messages.bracketMayLeanAnother,
    a: messages.whereStopLands,
    b: messages.alongStop,
    skipped: messages.skipItAnd0,
  };
}
