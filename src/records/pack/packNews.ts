import type { Pack } from "./pack.ts";
import { type PackDifference, packDifferences } from "./packDifferences.ts";

/** What a newer pack changes, a line each: what is new, what is gone, what is otherwise and in what. */
export function packNews(now: Pack, next: Pack): readonly string[] {
  const lines = packDifferences(now, next).flatMap((difference): string[] => {
    const line = lineOf(difference, next);
    return line === null ? [] : [line];
  });
  return lines;
}

const kinds = { stop: "stop", platform: "vehicle" } as const;

function lineOf({ list, kind, label, id, fields }: PackDifference, next: Pack): string | null {
  if (list === "pack")
    return kind === "differs" || kind === "onlyTheirs" ? `${label}: changed` : `${label}: gone`;
  if (list === "rules") return `${label}: ${kind === "onlyMine" ? "gone" : "changed"}`;
  const word = kinds[list];
  if (kind === "onlyTheirs") return `New ${word}: ${label}`;
  if (kind === "onlyMine") return `Gone: the ${word} ${label}`;
  const stop = list === "stop" ? next.stops.find((each) => each.id === id) : undefined;
  const names = new Set(fields.map(({ name }) => name));
  if (stop?.replacedBy !== undefined && names.has("replaced by")) {
    return `Replaced: ${label}, by ${stop.replacedBy}`;
  }
  if (stop?.state === "discontinued" && names.has("state")) return `Discontinued: ${label}`;
  return `Changed: ${label} (${[...names].join(", ")})`;
}
