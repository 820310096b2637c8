import * as messages from "../../words/compiled/screens/readings.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";

/** What an arm's outer end is called: a trailing arm is measured to the wheel's center. */
export function outerEnd({ armRole }: WordedLayout): string {
  return armRole === "carriesWheel" ? messages.wheelCenter : messages.outerJoint;
}

/** Where a stop on an arm is measured to. */
export function stopPoint({ stopOn }: WordedLayout): string {
  return stopOn === "arm" ? messages.tipOfStop : messages.whereStopLands;
}

/** How an arm's angles are looked at. */
export function angleView({ armRole }: WordedLayout): string {
  return armRole === "carriesWheel"
    ? messages.seenFromSideStraight
    : messages.straightAcrossVehicle;
}
