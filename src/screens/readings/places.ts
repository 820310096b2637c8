import type { WordedLayout } from "../layouts/wordedReading.ts";

/** What an arm's outer end is called: a trailing arm is measured to the wheel's center. */
export function outerEnd({ armRole }: WordedLayout): string {
  return armRole === "carriesWheel" ? "wheel center" : "outer joint";
}

/** Where a stop on an arm is measured to. */
export function stopPoint({ stopOn }: WordedLayout): string {
  return stopOn === "arm" ? "tip of the stop" : "where the stop lands";
}

/** How an arm's angles are looked at. */
export function angleView({ armRole }: WordedLayout): string {
  return armRole === "carriesWheel"
    ? "Seen from the side, straight along the vehicle"
    : "Straight across the vehicle";
}
