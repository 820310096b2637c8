import type { Side } from "../../physics/fitment.ts";
import type { ArmLength } from "../shapes/armLength.ts";
import type { Measurement } from "../shapes/measurement.ts";
import type { LinkageFromFront } from "./linkageFromFront.ts";
import type { DrawnNumbers, Surroundings } from "./pictured.ts";
import type { Skeleton } from "./skeleton.ts";
import type { ReadingWords, WordedLayout } from "./wordedReading.ts";

/** What a drawing seen along the vehicle marks its reading on. */
interface Marked {
  readonly skeleton: Skeleton;
  readonly numbers: DrawnNumbers;
  readonly side: Side;
}

/** From where a reading is drawn, and what is marked there. */
export type ReadingView =
  | {
      readonly from: "along";
      readonly around: Surroundings;
      measure(marked: Marked): Measurement;
    }
  /** The other arm and the knuckle in front view; `ground`: down to the ground. */
  | {
      readonly from: "front";
      readonly ground?: true;
      measure(linkage: LinkageFromFront, numbers: DrawnNumbers): Measurement;
    }
  /** A length of the arm, from above. */
  | ({ readonly from: "above" } & ArmLength);

/** A reading as it is told and drawn: all that screens say of it only here. */
export interface ToldReading {
  words(layout: WordedLayout): ReadingWords;
  readonly view: ReadingView;
  /** How the phone is laid to take it: along a line that slopes, or upright along one that leans. */
  readonly tilt?: "line" | "lean";
}
