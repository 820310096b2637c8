import type { CheckRecord } from "../check/checkRecord.ts";
import { readingsOf } from "./oddReadings.ts";

/** Who took the readings, each once, as far as they say; else who made the check. */
export function measurersOf(record: CheckRecord): readonly string[] {
  const names = readingsOf(record).flatMap(({ reading: { source = "measured", by } }) =>
    source === "measured" && by?.trim() ? [by.trim()] : [],
  );
  const author = record.author.name?.trim();
  return names.length === 0 && author ? [author] : [...new Set(names)];
}
