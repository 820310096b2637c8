import type { SheetlessFitment } from "../../physics/verdict/index.ts";
import type { CheckRecord } from "./checkRecord.ts";
import { type Completion, completeRecord } from "./completeRecord.ts";
import { fitmentOf } from "./fitmentOf.ts";
import type { StoredCheck } from "./storedCheck.ts";

const ofTheSheet: readonly string[] = ["stop.usableCompressionMm", "stop.curve"];

/**
 * The vehicle of a check that lacks nothing but what is on its stop's test sheet; null where it lacks more, or
 * less.
 */
export function withoutSheet(stored: StoredCheck, completion: Completion): SheetlessFitment | null {
  if (completion.ok || !completion.missing.every(({ field }) => ofTheSheet.includes(field))) {
    return null;
  }
  const { stop } = stored.record;
  // Nothing that is told of it depends on these.
  const filled = completeRecord({
    ...stored,
    record: { ...stored.record, stop: { ...stop, usableCompressionMm: 1, curve: [[1, 1]] } },
  });
  return filled.ok ? sheetless(filled.value) : null;
}

function sheetless(record: CheckRecord): SheetlessFitment {
  const { stop, ...fitment } = fitmentOf(record);
  return { ...fitment, stop: { name: stop.name, duty: stop.duty, freeHeight: stop.freeHeight } };
}
