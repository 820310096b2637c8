import type { Formula } from "../formula.ts";
import type { Message, Quantity, Sentence, Words } from "../sentence.ts";

/** What is put in for a letter: a number, one as it is always written, or one with its own factor or unit. */
export type TermValue = Quantity | Words | Sentence;

/** A term that goes by another letter here; without a value it is only called so. */
export interface Renamed {
  readonly letter: Words;
  readonly value?: Quantity;
}

/** A term that a formula names in words. */
export interface Named {
  readonly name: Message;
  readonly value: TermValue;
}

/** By the letters of the formula; one that is named in words by any key. */
export interface Terms {
  readonly [letter: string]: TermValue | Renamed | Named;
}

/** A formula, what is put in for its letters, and what the kernel gave for these. */
interface SumStep {
  readonly formula: Formula;
  readonly terms: Terms;
  /** Told after the numbers. */
  readonly note: Words;
  readonly result: Quantity;
}

/** How a number was found that is no sum of others. */
interface ToldStep {
  readonly formula: Words;
  readonly worked: Sentence;
  readonly result: Quantity;
}

/** One line of the working. Who shows it puts the numbers into the formula, once that is in words. */
export type FormulaStep = SumStep | ToldStep;

/** A line with what the kernel gave for these terms; `note` is told after the numbers. */
export function step(
  formula: Words | Formula,
  terms: Terms,
  result: Quantity,
  note: Words = "",
): FormulaStep {
  const isFormula = typeof formula === "object" && "text" in formula;
  return { formula: isFormula ? formula : { text: formula }, terms, note, result };
}

/** A line that tells how a number was found where it is no sum of others: by simulation or by search. */
export function told(formula: Words, worked: Sentence, result: Quantity): FormulaStep {
  return { formula, worked, result };
}
