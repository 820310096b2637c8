/** Who is at a check: looking at it, or has taken it. */
export interface Hand {
  readonly person: string;
  readonly does: "looks" | "took";
  /** Of several who took it, the one who did so first has it. */
  readonly revision: number;
  /** By the engine's clock, ms. */
  readonly at: number;
}

export type Hands = ReadonlyMap<string, readonly Hand[]>;

/** The one who has a check. */
export function takerOf(hands: readonly Hand[] = []): Hand | null {
  const takers = hands.filter(({ does }) => does === "took");
  return takers.sort((a, b) => a.revision - b.revision)[0] ?? null;
}
