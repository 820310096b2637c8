import * as messages from "../../words/compiled/records/pack.ts";
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
    return kind === "differs" || kind === "onlyTheirs"
      ? messages.changed({ label })
      : messages.gone({ label });
  if (list === "rules") return messages.changedWord({ label, isGone: kind === "onlyMine" });
  const word = kinds[list];
  if (kind === "onlyTheirs") return messages.newWord({ word, label });
  if (kind === "onlyMine") return messages.gone2({ word, label });
  const stop = list === "stop" ? next.stops.find((each) => each.id === id) : undefined;
  const names = new Set(fields.map(({ name }) => name));
  if (stop?.replacedBy !== undefined && names.has("replaced by")) {
    return messages.replacedBy({ label, replacedBy: stop.replacedBy });
  }
  if (stop?.state === "discontinued" && names.has("state")) return messages.discontinued({ label });
  return messages.changed2({ label, join: [...names].join(", ") });
}
