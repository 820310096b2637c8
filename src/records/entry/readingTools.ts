import type { Outcome } from "../../physics/outcome.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import { catalogueEntry } from "./readingCatalogue.ts";
import { isReach, isToolId, type Reach, type ToolGroup } from "./tools.ts";
import { type ToolShares, toolsOf, toolTolerance } from "./toolTolerance.ts";
import type { EntryUnit } from "./units.ts";

/** Up to this a reading is within reach of short tools, mm: gaps, clearances, a stop's height. */
const nearMm = 400;

/** The readings that one tool serves; null where no tool is known for what is typed. */
export function toolGroupOf(id: ReadingId): ToolGroup | null {
  const { kind, believable } = catalogueEntry(id);
  if (kind === "length") return believable[1] <= nearMm ? "near" : "length";
  return kind === "angle" || kind === "mass" ? kind : null;
}

/**
 * How well the two points of a reading can usually be got at. Common practice: gaps, clearances and
 * heights in plain view; arms and dampers at arm's length; track and spacing across the vehicle.
 */
export function usualReach(id: ReadingId): Reach {
  const { kind, usualTolerance } = catalogueEntry(id);
  if (kind === "length") {
    if (usualTolerance <= 1) return "clear";
    return usualTolerance <= 2 ? "awkward" : "far";
  }
  return kind === "angle" && usualTolerance > 0.5 ? "awkward" : "clear";
}

/** What of `source` names a tool, its reach and who took the reading; nothing where it names none. */
export function toolFields(source: {
  readonly tool?: string;
  readonly reach?: string;
  readonly by?: string;
}): {
  readonly tool?: string;
  readonly reach?: string;
  readonly by?: string;
} {
  return {
    ...(typeof source.tool === "string" && { tool: source.tool }),
    ...(typeof source.reach === "string" && { reach: source.reach }),
    ...(typeof source.by === "string" && { by: source.by }),
  };
}

/**
 * The ± that the entry's tool gives at the mean of `values`, and what it is made of. Null where no
 * tool is named, or one that this version does not know; a fault where the tool does not reach.
 */
export function entryToolShares(
  id: ReadingId,
  entry: {
    readonly texts: readonly string[];
    readonly unit: EntryUnit;
    readonly tool?: string;
    readonly reach?: string;
  },
  values: readonly number[],
): Outcome<ToolShares> | null {
  const group = toolGroupOf(id);
  const { tool } = entry;
  if (group === null || values.length === 0 || !isToolId(tool)) return null;
  if (!toolsOf(group).includes(tool)) return null;
  return toolTolerance({
    tool,
    reach: isReach(entry.reach) ? entry.reach : usualReach(id),
    kind: group === "near" ? "length" : group,
    value: Math.abs(mean(values)),
    unit: entry.unit,
    texts: entry.texts,
  });
}
