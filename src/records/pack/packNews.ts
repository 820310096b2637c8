import { commaList, distinctWords, type Message } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { Pack } from "./pack.ts";
import { type PackDifference, packDifferences } from "./packDifferences.ts";

/** What a newer pack changes, a line each: what is new, what is gone, what is otherwise and in what. */
export function packNews(now: Pack, next: Pack): readonly Message[] {
  return packDifferences(now, next).flatMap((difference): Message[] => {
    const line = lineOf(difference, next);
    return line === null ? [] : [line];
  });
}

function lineOf({ list, kind, label, id, fields }: PackDifference, next: Pack): Message | null {
  if (list === "pack")
    return kind === "differs" || kind === "onlyTheirs"
      ? messages.changed({ label })
      : messages.gone({ label });
  if (list === "rules") return messages.changedWord({ label, isGone: kind === "onlyMine" });
  if (kind === "onlyTheirs") return messages.newItem({ list, label });
  if (kind === "onlyMine") return messages.goneItem({ list, label });
  const stop = list === "stop" ? next.stops.find((each) => each.id === id) : undefined;
  const isOther = (field: string) => fields.some(({ path }) => path === field);
  if (stop?.replacedBy !== undefined && isOther("replacedBy")) {
    return messages.replacedBy({ label, replacedBy: stop.replacedBy });
  }
  if (stop?.state === "discontinued" && isOther("state")) return messages.discontinued({ label });
  return messages.changedIn({
    label,
    names: commaList(distinctWords(fields.map(({ name }) => name))),
  });
}
