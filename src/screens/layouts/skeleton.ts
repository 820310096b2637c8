import type { LayoutKind } from "../../physics/fitment.ts";
import { add, type Point, tyreRadius } from "../shapes/geometry.ts";
import type { DrawnNumbers, Surroundings } from "./pictured.ts";

/**
 * The points of one side of a layout as it stands, seen along the vehicle: mm, x outboard, y up. The
 * origin is the arm's pivot, or for a beam axle the middle of the axle.
 */
export interface Skeleton {
  readonly kind: LayoutKind;
  readonly pivot: Point;
  readonly outer: Point;
  /** The arm's bend under the stop or at the damper's mount. */
  readonly bend: Point;
  /** Unit direction up the stop's axis. */
  readonly axis: Point;
  /** The damper's or strut's lower eye; where the stop acts on an arm or axle, the contact patch. */
  readonly foot: Point;
  /** What the stop meets. */
  readonly pad: Point;
  readonly stopFace: Point;
  /** The stop's mounted end. */
  readonly stopTop: Point;
  /** The damper's or strut's upper eye; where the stop acts on an arm or axle, the stop's top. */
  readonly head: Point;
  readonly stopHeight: number;
  /** "missing": seat and pad face each other with nothing between. */
  readonly stop: "free" | "pressed" | "missing";
  /** The stop stands on the arm and meets a pad on the frame. */
  readonly stopOnArm: boolean;
  readonly wheelCentre: Point;
  readonly wheelRadius: number;
  /** A trailing arm, seen from beside the vehicle: x rearward, the wheel a circle about the arm's end. */
  readonly fromSide: boolean;
  readonly archY: number;
  /** A damper and its spring beside the stop, where the layout's stop sits elsewhere. */
  readonly damperFoot: Point;
  readonly damperHead: Point;
}

/** The points that a layout itself tells. */
export type LayoutPoints = Omit<Skeleton, "kind" | "axis" | "archY" | "fromSide" | "wheelRadius">;

export const axleTubeRadius = 42;

/** How the stop stands at ride: the gap before it and its height as it is, mm. */
export interface Stand {
  readonly stop: Skeleton["stop"];
  readonly gap: number;
  readonly height: number;
}

/** What the points of a layout follow from. */
export interface ToStand {
  /** What must be seen beside the reading that is drawn; null: no part of the layout is. */
  readonly around: Surroundings | null;
  readonly numbers: DrawnNumbers;
  /** Unit direction up the stop's axis. */
  readonly axis: Point;
  readonly stand: Stand;
  readonly stopOnArm: boolean;
}

/** The wheel's center: beside the outer joint, or as high as the ground's distance from the pivot line has it. */
export function wheelCentreOf({ around, numbers }: ToStand, outer: Point): Point {
  const beside = add(outer, { x: 135, y: 75 });
  return around === "ground" ? { x: beside.x, y: tyreRadius - numbers.pivotHeight } : beside;
}
