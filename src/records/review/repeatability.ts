import { withoutSide } from "../../physics/readings/index.ts";
import type { PersonDifference } from "../filling/secondPerson.ts";
import type { Repeatability } from "../pack/pack.ts";

/** How far two people differ at one reading, taken with one tool. */
export interface DifferenceStatistics {
  /** By its name, without a side. */
  readonly reading: string;
  readonly tool: string;
  readonly pairs: number;
  /** Of second less first. */
  readonly median: number;
  /** Standard deviation of one person's reading, from the differences of pairs. */
  readonly spread: number;
  readonly largest: number;
  /** The same as ± of a rectangular distribution; null below ten pairs. */
  readonly tol: number | null;
}

/** Below this many pairs nothing is offered. */
export const leastPairs = 10;

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 === 1
    ? (sorted[Math.floor(middle)] ?? 0)
    : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
}

/**
 * Standard deviation of a single reading from n pairs of readings of the same thing: s = √(Σd²/(2n)), in
 * the reading's unit, 0 or more. The ± of a rectangular distribution of the same variance is √3·s,
 * rounded up to a hundredth.
 *
 * @source duplicate determinations, s² = Σd²/(2n) (from memory: the usual estimate of repeatability from
 * pairs); JCGM 100:2008, 4.3.7 (a rectangular distribution of half-width a has u = a/√3)
 */
export function differenceStatistics(
  all: readonly PersonDifference[],
): readonly DifferenceStatistics[] {
  const groups = new Map<string, { reading: string; tool: string; values: number[] }>();
  for (const { id, tool, difference } of all) {
    const reading = withoutSide(id);
    const key = JSON.stringify([reading, tool]);
    const group = groups.get(key) ?? { reading, tool: tool ?? "", values: [] };
    group.values.push(difference);
    groups.set(key, group);
  }
  return [...groups.values()]
    .map(({ reading, tool, values }): DifferenceStatistics => {
      const pairs = values.length;
      const spread = Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / (2 * pairs));
      const tol = Math.ceil(Number((100 * Math.sqrt(3) * spread).toFixed(6))) / 100;
      return {
        reading,
        tool,
        pairs,
        median: medianOf(values),
        spread,
        largest: Math.max(...values.map(Math.abs)),
        tol: pairs >= leastPairs ? tol : null,
      };
    })
    .sort((a, b) => b.pairs - a.pairs || a.reading.localeCompare(b.reading));
}

/** What a pack may take over: of every reading and tool with ten pairs or more. */
export function measuredTolerances(
  statistics: readonly DifferenceStatistics[],
): readonly Repeatability[] {
  return statistics.flatMap(({ reading, tool, tol, pairs }) =>
    tol === null || tool === "" ? [] : [{ reading, tool, tol, pairs }],
  );
}
