import type { MeasuredAngle, MeasuredLength } from "../motion/measuredQuantity.ts";

/** The lengths and angles of one side, as the motion of a layout asks for them by the readings' names. */
export interface Places<Name extends string, Linkage extends string> {
  /** A length that the layout has no motion without. */
  neededLength(name: Name): MeasuredLength;
  /** A length that may be absent. */
  optionalLength(name: Name): MeasuredLength | null;
  /** An offset that is 0 where it was not measured. */
  offset(name: Name): MeasuredLength;
  /** An angle, or what stands in for it, or a level line. */
  angle(name: Name): MeasuredAngle;
  /** An angle that has no stand-in. */
  optionalAngle(name: Name): MeasuredAngle | null;
  /** Whether a reading, or all that it is made of, is there. */
  has(name: Name): boolean;
  /** g0 of a stop on the arm, mm: its gap, the seat's distance where it is missing, 0 where it is pressed. */
  standOff(): MeasuredLength;
  /** The place of κ, a mean and its rectangular half-width. */
  wheelPerOuter(mean: number, halfWidth: number): number;
  /** The place of m, the factor on every z that a planar model may be off by. Asked for last. */
  modelScale(linkage: Linkage): number;
  /** All that was asked for so far, in the order in which it must be set. */
  readonly quantities: readonly { readonly quantity: MeasuredLength | MeasuredAngle }[];
}
