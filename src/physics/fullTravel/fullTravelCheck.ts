import type { TouchedPart } from "../fitment.ts";

/** What a hand check can meet: something of the vehicle, or a block put in the stop's place. */
export type MetPart = TouchedPart | "block";
/** … and full stop, which is computed alone. */
export type ComparedPart = MetPart | "fullStop";

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
export const partTouches: Readonly<Record<MetPart, string>> = {
  ...limitTouches,
  block: "the block in the stop's place is met",
  stop: "the stop meets its pad",
  hose: "a hose, wire or line touches or pulls tight",
};
