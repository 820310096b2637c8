import type { TouchedPart } from "../fitment.ts";
import { limitTouches } from "../readingNames.ts";

export const touchedParts: readonly TouchedPart[] = [
  "stop",
  "tyre",
  "damper",
  "spring",
  "metal",
  "hose",
  "other",
];

/** What happens at a contact, as the subject and verb of a clause. */
export const partTouches: Readonly<Record<TouchedPart, string>> = {
  ...limitTouches,
  stop: "the stop meets its pad",
  hose: "a hose, wire or line touches or pulls tight",
};
