import type { Standing } from "../motion/layoutMotion.ts";
import type { LayoutSaid } from "./layoutSaid.ts";
import { across, along, type PlanePoint, turnedBy } from "./plane.ts";

/** How the parts that were measured stand at one wheel travel, the body held still. */
export interface TravelPose {
  /** The arm's outer joint, or the wheel's center where the arm carries it; null without an arm. */
  readonly outer: PlanePoint | null;
  /** Of two measured arms the other one; null where its length was not measured. */
  readonly otherArm: { readonly pivot: PlanePoint; readonly joint: PlanePoint } | null;
  /** The wheel's center where its place beside the joint was measured; null elsewhere. */
  readonly wheel: PlanePoint | null;
  /** Turn of the wheel carrier since ride, rad, its top inboard positive. */
  readonly carrierTurn: number;
  /** Where the stop is mounted, its spacer included. */
  readonly seat: PlanePoint;
  /** What the stop meets, straight along its axis from the seat. */
  readonly pad: PlanePoint;
  /** Unit direction along the pad's face. */
  readonly padAlong: PlanePoint;
  /** Lower and upper eye of the damper, or the strut's lower joint and top mount; null elsewhere. */
  readonly rod: { readonly foot: PlanePoint; readonly head: PlanePoint } | null;
}

/** What holds the wheel, of a pose. */
export type PosedLinkage = Pick<TravelPose, "outer" | "otherArm" | "wheel" | "carrierTurn">;

export const noLinkage: PosedLinkage = { outer: null, otherArm: null, wheel: null, carrierTurn: 0 };

/** A layout at its mean readings, to be posed. */
export interface Posed<Name extends string, Linkage extends string> {
  readonly said: LayoutSaid;
  readonly linkage: Linkage;
  /** From the stop's seat to its pad at ride, mm. */
  readonly seatToPad: number;
  /** How far a stop on the arm stands off its pad at ride, mm. */
  readonly standOff: number;
  /** mm; null where it was not measured. */
  length(name: Name): number | null;
  /** rad; `standIn` where it was not measured. */
  angle(name: Name, standIn?: number): number;
}

/** One moment of a travel: wheel travel z and closing s of the stop, mm, and the turns since ride. */
export interface PosedMoment {
  readonly z: number;
  readonly s: number;
  readonly turns: Standing;
}

/** Of a damper's length at ride its body, at least; from its upper eye down to the seat at most, mm. */
const bodyShare = 0.3;
const eyeToSeat = 30;

/** A stop on a rod: its seat under the upper eye, its pad on the body, whose length does not change. */
export function poseOnRod(
  rod: NonNullable<TravelPose["rod"]>,
  longAtRide: number,
  seatToPad: number,
  s: number,
  linkage: PosedLinkage,
): TravelPose {
  const { foot, head } = rod;
  const long = Math.hypot(head.x - foot.x, head.y - foot.y);
  const axis = { x: (head.x - foot.x) / long, y: (head.y - foot.y) / long };
  const body = bodyShare * longAtRide;
  const mount = Math.min(eyeToSeat, longAtRide - body - seatToPad);
  const seat = along(head, axis, -mount);
  const pad = along(seat, axis, s - seatToPad);
  return { ...linkage, seat, pad, padAlong: across(axis), rod };
}

/** The wheel's center, which stands still against the carrier: beside its lower joint, by offset and height, mm. */
export function wheelByJoint(
  joint: PlanePoint,
  carrierTurn: number,
  offset: number,
  above: number,
): PlanePoint {
  return turnedBy({ x: joint.x + offset, y: joint.y + above }, carrierTurn, joint);
}
