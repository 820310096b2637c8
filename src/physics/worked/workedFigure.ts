import type { TravelMotion } from "../budget/handMotion.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import type { LayoutMotion } from "../motion/layoutMotion.ts";
import { Turn } from "../motion/turn.ts";
import type { Quantity, QuantityKind, Sentence, Words } from "../sentence.ts";
import type { FormulaStep } from "./step.ts";

/** One letter of a formula, what it stands for, its value here, and where that value came from. */
export interface FormulaSymbol {
  readonly symbol: Words;
  readonly meaning: Words;
  readonly value: Quantity | Words | Sentence;
  readonly origin: Words | Sentence;
}

/** How a figure on the answer came about; the last step's result is the figure shown. */
export interface WorkedFigure {
  readonly symbols: readonly FormulaSymbol[];
  readonly steps: readonly FormulaStep[];
  readonly source: Words;
  /** What has to be true for the figure to hold. */
  readonly assumed: readonly Words[];
}

/** Steps with the bare value they end in, for use in the next step. */
export interface Working {
  readonly steps: readonly FormulaStep[];
  readonly value: number;
}

export function quantity(kind: QuantityKind, value: number): Quantity {
  return { kind, value };
}

export const mm = (value: number) => quantity("length", value);
export const degrees = (value: number) => quantity("angle", value);

export const degreesIn = (radians: number) => (radians * 180) / Math.PI;
export const inDegrees = (radians: number) => degrees(degreesIn(radians));

/** How far a turn of the kinematics is, degrees. */
export const degreesOf = ({ cos, sin }: Turn) => degreesIn(Math.atan2(sin, cos));

/** A turn of the kinematics by an angle in degrees. */
export function turnBy(angle: number): Turn {
  const turn = new Turn();
  turn.to((angle * Math.PI) / 180);
  return turn;
}

/** ds/dz at a wheel travel. */
export function slopeAt(motion: TravelMotion, travel: number): number {
  return closingAt(motion, travel).perMm;
}

/** R at ride of a motion that is set. */
export const ratioOf = (motion: TravelMotion) => quantity("ratio", 1 / slopeAt(motion, 0));

export function lastValue(figure: WorkedFigure): number | undefined {
  return figure.steps.at(-1)?.result.value;
}

/** Wheel travel, mm, for a clearance at a distance from the pivot line, both mm. */
export type ArmPointWorking = (
  distance: number,
  clearance: number,
  letters: { readonly distance: string; readonly clearance: string },
) => Working;

/** How one layout turns stop closing into wheel travel and back, told step by step. */
export interface LayoutWorking {
  readonly symbols: readonly FormulaSymbol[];
  /** The motion that is told, set to the mean readings. */
  readonly motion: LayoutMotion;
  /** The same led through contacts found by hand, where there are some. */
  readonly led: TravelMotion;
  /** R at ride. */
  ratio(): Working;
  /** Wheel travel, mm, for a stop closing, mm. `letter` names the closing in the formulas. */
  wheelTravel(closing: number, letter: string): Working;
  /** Stop closing, mm, for a wheel travel, mm. */
  closing(wheelTravel: number, letter: Words): Working;
  /** Wheel travel at which a point of the arm has risen by a clearance; absent where there is no arm. */
  readonly armPoint?: ArmPointWorking;
  readonly source: Words;
}
