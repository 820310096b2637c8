import type { ArmRole, LayoutKind, LimitKind } from "../../physics/fitment.ts";
import type { LimitPlace, StopCarrier } from "../../physics/readings/index.ts";

/** How one reading is taken, in words. */
export interface ReadingWords {
  /** The screen's heading, the step's name and the drawing's title. */
  readonly name: string;
  /** From A to B. */
  readonly how: string;
  /** The commonest mistake. */
  readonly wrong: string;
  /** The two ends as they stand in the picture: 22 letters at most; none where nothing is between. */
  readonly a: string;
  readonly b: string;
  /** Read with the number being typed: what an angle's sign means, and the like. */
  readonly note?: string;
  /** What happens without it, where it can be skipped. */
  readonly skipped?: string;
}

/** What the words depend on. */
export interface WordedLayout {
  readonly kind: LayoutKind;
  readonly armRole?: ArmRole | undefined;
  readonly stopOn?: StopCarrier | undefined;
}

export interface WordedLimit {
  readonly kind: LimitKind;
  readonly at: LimitPlace;
}
