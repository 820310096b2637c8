import type { Sentence, Words } from "./sentence.ts";

/**
 * A formula as people see it, in the letters of its terms. It stands beside the function that computes it,
 * and the line with numbers put in is made from it: whoever changes one sees the other.
 */
export interface Formula {
  readonly text: Words;
  /** What is computed, where the text tells it in words. */
  readonly by?: Words | Sentence;
  /** What the expression comes out in, where that is not the unit of its result. */
  readonly unit?: "m" | "m/s";
}
