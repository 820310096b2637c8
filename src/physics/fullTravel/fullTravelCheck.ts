import type { LimitKind, Reading, Side } from "../fitment.ts";
import { limitTouches } from "../readingNames.ts";

/** What touches while the wheel is moved up by hand. */
export type TouchedPart = "stop" | LimitKind | "hose";

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

/** One side, its wheel moved up by hand with the spring out. mm. */
export interface FullTravelCorner {
  readonly side: Side;
  /** Height from hub to arch at the measured ride height; only where heights are measured. */
  readonly atRide?: Reading;
  /** Wheel travel from the ride height, or the height from hub to arch, at each contact. */
  readonly contacts: { readonly [Part in TouchedPart]?: Reading };
}

/** A hand-cycled check of the whole travel. */
export interface FullTravelCheck {
  /** Travel counted from the ride height, or the shrinking height from hub to arch. */
  readonly measure: "wheelTravel" | "hubToArch";
  /** Beam axle: both wheels raised together, or one with the other on the ground. */
  readonly movement: "both" | "one";
  readonly corners: readonly FullTravelCorner[];
}
