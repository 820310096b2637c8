import type { LayoutMotion, Standing } from "../motion/layoutMotion.ts";
import type { AxleMovement } from "../motion/straightMotion.ts";
import type { Message } from "../sentence.ts";
import type { LayoutSaid } from "./layoutSaid.ts";
import type { Places } from "./places.ts";
import type { Posed, PosedMoment, TravelPose } from "./pose.ts";
import type { Turned, TurnedOf } from "./turned.ts";

/** A way in which the wheel's travel follows from the stop's closing. */
export interface LinkageDefinition {
  /** What the planar model itself may be off: the standard deviation of a factor m on every z. */
  readonly doubt: number;
  /** What is shown as the source of its formulas. */
  readonly source: Message;
}

/** Readings that tell how the wheel moves with the arm or strut, asked for only where they are wanted. */
interface CloserReadings<Name extends string, Linkage extends string> {
  readonly parts: readonly string[];
  /** The first of them, and a clause that asks for them all. */
  readonly first: Name;
  readonly ask: Message;
  /** The linkage without them, and with all of them. */
  readonly from: Linkage;
  readonly to: Linkage;
  /** They are another arm's: only where the measured arm is one of two. */
  readonly ofTwoArms: boolean;
}

/**
 * Where a stop sits, and everything about such a suspension that is said only here. `Name`: the readings that
 * it takes; `Linkage`: the ways in which its wheel may follow.
 */
export interface LayoutDefinition<Name extends string, Linkage extends string> {
  /** As a column of a table has it. */
  readonly tableWord: string;
  /** The parts of a suspension whose readings it takes. */
  readonly takes: readonly string[];
  /** The stop, or the damper with the stop on its rod, is moved by an arm that turns about a pivot line. */
  readonly onArm: boolean;
  /** The stop sits on a rod, along which its gap is measured. */
  readonly onRod: boolean;
  /** It may be said what the stop meets: a flat pad that turns, a flat one on the frame, a round part. */
  readonly saysStopOn: boolean;
  /** Both wheels are on one part: one wheel alone moves its stop otherwise than both together. */
  readonly joinsWheels: boolean;
  /** The reading that a strange lever ratio most likely comes from. */
  readonly doubtful: Name;
  readonly closer: CloserReadings<Name, Linkage> | null;
  readonly linkages: { readonly [Each in Linkage]?: LinkageDefinition };
  /** How wheel and stop move together, by the linkage that the readings allow. `movement`: of a beam axle. */
  motion(
    said: LayoutSaid,
    places: Places<Name, Linkage>,
    movement: AxleMovement,
  ): { readonly linkage: Linkage; readonly motion: LayoutMotion };
  /** Has the readings be those at another ride height, where its parts have turned to `standing`. */
  turn(turned: Turned<Name>, standing: Standing, of: TurnedOf<Linkage>): void;
  /** How its parts stand at a moment of the travel; nothing is found anew, closing and turns come in. */
  pose(posed: Posed<Name, Linkage>, moment: PosedMoment): TravelPose;
}
