import type { Fault } from "../../physics/outcome.ts";
import { worded } from "../../saying/texts.ts";
import type { ImportCounts } from "../../storage/deskDatabase.ts";

/** Refusals kept with their reasons; of those after them only the number is. */
const refusedShown = 200;

export function counted(
  counts: ImportCounts,
  more: Partial<Pick<ImportCounts, "taken" | "added" | "present">>,
): ImportCounts {
  return {
    ...counts,
    taken: counts.taken + (more.taken ?? 0),
    added: counts.added + (more.added ?? 0),
    present: counts.present + (more.present ?? 0),
  };
}

export function refusedToo(counts: ImportCounts, name: string, { sentence }: Fault): ImportCounts {
  const { refused, refusedCount } = counts;
  const told = { name, sentence: worded(sentence) };
  return {
    ...counts,
    refusedCount: refusedCount + 1,
    refused: refused.length < refusedShown ? [...refused, told] : refused,
  };
}
