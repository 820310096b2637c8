import type { ReadingId } from "../../physics/readings/index.ts";
import type { BetterTool, ToolsAtHand } from "../../physics/remeasure/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { Message } from "../../words/message.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { type Entry, readEntry } from "./entry.ts";
import { isReading } from "./entryPath.ts";
import { toolGroupOf, usualReach } from "./readingTools.ts";
import { isReach, type ToolId } from "./tools.ts";
import { toolsOf, toolTolerance } from "./toolTolerance.ts";

/** What a workshop has, and a person can be asked to fetch. Common practice. */
const usual: { readonly [Tool in ToolId]?: Message } = {
  tapeII: messages.classIiTape,
  rule: messages.steelRule,
  caliper: messages.caliper,
  angleGauge: messages.digitalAngleGauge,
  phone: messages.phonesTilt,
  wheelScales: messages.wheelScales,
};

/** How far the usual caliper and steel rule reach, mm. Common practice. */
const longest: { readonly [Tool in ToolId]?: number } = { caliper: 200, rule: 1000 };

function toolsFor(id: ReadingId, entry: Entry): readonly BetterTool[] {
  const group = toolGroupOf(id);
  const reading = readEntry(id, entry);
  if (group === null || !reading.ok) return [];
  const { values } = reading.value;
  const value = Math.abs(mean(values));
  return toolsOf(group).flatMap((tool) => {
    const name = usual[tool];
    if (name === undefined || value > (longest[tool] ?? Number.POSITIVE_INFINITY)) return [];
    const shares = toolTolerance({
      tool,
      reach: isReach(entry.reach) ? entry.reach : usualReach(id),
      kind: group === "near" ? "length" : group,
      value,
      unit: entry.unit,
      texts: entry.texts,
    });
    return shares.ok ? [{ id: tool, name, halfWidth: shares.value.halfWidth }] : [];
  });
}

/**
 * The tools that each reading of a check could be taken with, and the ± that each then has at the
 * value and with the reach that the reading has now.
 */
export function toolsAtHand({ entries }: Pick<StoredCheck, "entries">): ToolsAtHand {
  return Object.fromEntries(
    Object.entries(entries).flatMap(([id, entry]) =>
      isReading(id) ? [[id, toolsFor(id, entry)]] : [],
    ),
  );
}
