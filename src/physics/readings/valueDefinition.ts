import type { Message } from "../sentence.ts";

/** What a value measures; mm, deg, kg, N/mm, N·s/mm, N, km/h, 1/km, or a plain number with its unit in its name. */
export type ValueKind =
  | "length"
  | "angle"
  | "mass"
  | "rate"
  | "damping"
  | "force"
  | "roadSpeed"
  | "contactRate"
  | "number";

/** One value that is measured or typed: everything about it that is said only here. */
export interface ValueDefinition {
  /** Plain words in the middle of a sentence, without article or side: "gap", "ride height". */
  readonly name: Message;
  readonly kind: ValueKind;
  /** What is seen on vehicles, model's unit (common practice). Outside: ask again, never refuse. */
  readonly believable: readonly [number, number];
  /** 0 is an ordinary value, though it lies outside of what is believable otherwise. */
  readonly ordinaryZero?: true;
  /** The ± half-width offered at first, model's unit; 0 for what is typed without one. */
  readonly usualTolerance: number;
  /** The values that can be at all. */
  readonly allowed: "aboveZero" | "zeroOrMore" | "any";
}

/** Is a value, in the model's unit, seen on vehicles? Where not, someone should look again. */
export function isBelievable(
  { believable, ordinaryZero }: Pick<ValueDefinition, "believable" | "ordinaryZero">,
  value: number,
): boolean {
  const [least, greatest] = believable;
  return (value >= least && value <= greatest) || (ordinaryZero === true && value === 0);
}

export type ValueDefinitions = Readonly<Record<string, ValueDefinition>>;
