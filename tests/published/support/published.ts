/**
 * One comparison with the outside: what a source gives for a quantity, and what is computed here. It is
 * run by trustTable.test.ts, and written to README.md by `npm run trust-table`: one place for both.
 */
export type Mark =
  /** Seen in the source, or computed by another author's program. */
  | "met"
  /** Known in the trade, without a source. */
  | "common practice"
  /** Recalled, not seen. */
  | "from memory";

export type Figure = number | string;

export interface Comparison {
  readonly quantity: string;
  readonly published: Figure;
  compute(): Figure;
  /** Greatest difference that is let pass, in the quantity's unit; 0 where every figure must be the same. */
  readonly tolerance: number;
  readonly mark: Mark;
}

export interface PublishedSource {
  readonly name: string;
  readonly comparisons: readonly Comparison[];
}

/** Adds a comparison to its source; a mark given here stands before that of the source. */
export type Published = (
  quantity: string,
  published: Figure,
  compute: () => Figure,
  tolerance?: number,
  mark?: Mark,
) => void;

export function publishedSource(
  name: string,
  sourceMark: Mark,
  fill: (published: Published) => void,
): PublishedSource {
  const comparisons: Comparison[] = [];
  fill((quantity, published, compute, tolerance = 0, mark = sourceMark) => {
    comparisons.push({ quantity, published, compute, tolerance, mark });
  });
  return { name, comparisons };
}

/** What was computed, and whether it is the published figure within the tolerance. */
export interface Compared {
  readonly computed: Figure;
  readonly met: boolean;
}

export function compare({ published, compute, tolerance }: Comparison): Compared {
  const computed = compute();
  if (typeof published === "string" || typeof computed === "string") {
    return { computed, met: published === computed };
  }
  return { computed, met: Math.abs(computed - published) <= tolerance };
}

/** Half the last place of a figure given to so many significant digits: what rounding leaves open. */
export function rounding(value: number, digits: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - digits);
}
