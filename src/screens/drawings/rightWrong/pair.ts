import type { JSX } from "preact";

/** One way of taking a reading: what it is, in a few words, and its picture on 150 × 100. */
export interface Panel {
  readonly words: string;
  readonly picture: JSX.Element;
}

export interface Pair {
  readonly right: Panel;
  readonly wrong: Panel;
}
