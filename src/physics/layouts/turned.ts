import type { LayoutSaid } from "./layoutSaid.ts";

/** The readings of a layout while its parts turn to another ride height; turns in rad, the outer end up. */
export interface Turned<Name extends string> {
  /** A line that has turned with its outer end up: its angle below the horizontal is less by as much. */
  angle(name: Name, turn: number): void;
  /** The same for one that has a stand-in, which turns as well. */
  measuredAngle(name: Name, turn: number): void;
  /** A lean turns toward the pivot as the outer end goes up. */
  lean(name: Name, turn: number): void;
  /** A rod whose lower end turns with the arm and whose upper end stays. */
  rod(rod: RodNames<Name>, turn: number): void;
  /** Where a point of the wheel carrier stands from the lower joint, after the carrier's turn. */
  aroundJoint(across: Name, up: Name, turn: number, outward: 1 | -1): void;
  /** As it was before the turn, rad below the horizontal, or of a lean. */
  angleBefore(name: Name): number;
  /** As it was before the turn, mm. */
  lengthBefore(name: Name): number;
  /** κ in place of the reading that it follows from. */
  proportion(wheelPerOuter: number, inPlaceOf: Name): void;
}

interface RodNames<Name> {
  readonly arm: Name;
  readonly line: Name;
  readonly length: Name;
  readonly lean: Name;
}

/** What the turn of a layout depends on. */
export interface TurnedOf<Linkage extends string> {
  readonly said: LayoutSaid;
  readonly linkage: Linkage;
}
