/** An answer of the desk that nobody has looked at yet. */
export interface UnseenAnswer {
  readonly id: string;
  readonly about: string;
  open(): void;
}

export interface Sent {
  /** By the id of the check: where it stands at the desk. */
  readonly words: ReadonlyMap<string, string>;
  readonly answers: readonly UnseenAnswer[];
}
