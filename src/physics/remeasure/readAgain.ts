import type { Words } from "../sentence.ts";
import type { DrawnReading } from "../uncertainty/drawnReading.ts";

/** A tool at hand: its name in the middle of a sentence ("a caliper") and its ± half-width. */
export interface BetterTool {
  /** Whatever the caller knows it by. */
  readonly id: string;
  readonly name: Words;
  /** In the reading's own unit. */
  readonly halfWidth: number;
}

/** How a reading is taken again. */
export type RemeasureWay =
  /** More repeats with the same tool, added to those there are. */
  | { readonly kind: "repeat"; readonly more: number }
  /** Anew, as often as before, with a better tool; the old values count no more. */
  | { readonly kind: "tool"; readonly tool: BetterTool }
  /** A ride value found out anew, known twice as exactly. */
  | { readonly kind: "halve" };

/** What is left in doubt about one reading, and how far taking it again may move it. Its own unit. */
export interface AfterReading {
  /** Rectangular ± and normal standard deviation left. */
  readonly halfWidth: number;
  readonly standardError: number;
  /** The new mean less the old: a sum of rectangular parts (half-widths) and one normal part. */
  readonly shift: { readonly halfWidths: readonly number[]; readonly standardDeviation: number };
}

/**
 * The doubt about a reading after it was taken again, and the spread of its new mean about the old.
 * Nothing is known beforehand but the doubt there is, so that the new mean is expected where the old
 * one stands.
 *
 * - repeat: n values become n + m. The scatter s is expected to stay, so the normal part falls from
 *   s/√n to s/√(n + m): three times as many more halve it. The tool's rectangular part is one error
 *   common to all repeats and does not shrink. The mean moves by a normal amount of variance
 *   s²·(1/n − 1/(n + m)). With one value no scatter is known, and a repeat takes nothing away.
 * - tool: the rectangular part becomes the better tool's, the normal part stays s/√n. The new mean is
 *   the true value with the new doubt, the old one the true value with the old doubt, so that the two
 *   differ by both.
 * - halve: as tool, with half the half-width. An assumption, shown as such.
 *
 * Source: JCGM 100:2008, 4.2.3 (mean of repeats), 4.3.7 (rectangular), F.1.1.2 and F.2 (what repeats
 * average out and what they do not). All in the reading's own unit.
 *
 * @param count repeats taken so far, ≥ 1
 */
export function afterWay(reading: DrawnReading, count: number, way: RemeasureWay): AfterReading {
  const { halfWidth, standardError } = reading;
  if (way.kind === "repeat") {
    const left = standardError * Math.sqrt(count / (count + way.more));
    return {
      halfWidth,
      standardError: left,
      shift: { halfWidths: [], standardDeviation: Math.sqrt(standardError ** 2 - left ** 2) },
    };
  }
  const better = way.kind === "tool" ? way.tool.halfWidth : halfWidth / 2;
  return {
    halfWidth: better,
    standardError,
    shift: {
      halfWidths: [halfWidth, better],
      standardDeviation: standardError * Math.SQRT2,
    },
  };
}

/** Repeats that are proposed at once: as many as are taken without tiring. Common practice. */
const repeatsProposed = 3;

/**
 * The ways worth proposing, the least trouble first: more repeats where scatter is part of the doubt,
 * then each tool that measures at least a fifth closer, and for ride values known twice as exactly.
 */
export function waysFor(
  reading: DrawnReading,
  count: number,
  tools: readonly BetterTool[],
): readonly RemeasureWay[] {
  const ways: RemeasureWay[] = [];
  if (count >= 2 && reading.standardError > 0) ways.push({ kind: "repeat", more: repeatsProposed });
  if (reading.id.startsWith("ride.")) {
    if (reading.halfWidth > 0) ways.push({ kind: "halve" });
    return ways;
  }
  const closer = tools
    .filter((tool) => tool.halfWidth >= 0 && tool.halfWidth <= 0.8 * reading.halfWidth)
    .sort((a, b) => b.halfWidth - a.halfWidth);
  return [...ways, ...closer.map((tool): RemeasureWay => ({ kind: "tool", tool }))];
}
