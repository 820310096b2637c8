import type { Outcome } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { newId, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { storedFromRecord } from "../../records/filling/storedFromRecord.ts";
import { canonicalText } from "../../records/text/canonicalText.ts";
import type { CheckStore } from "../../storage/checkStore.ts";

export interface SavedQuickCheck {
  readonly stored: StoredCheck;
  readonly outcome: Outcome<unknown>;
}

function sameReadings(before: StoredCheck, record: CheckRecord): boolean {
  return canonicalText(before.record) === canonicalText(record);
}

/**
 * Keeps the answer's record as a check among the others. Where that check has been carried on since
 * this screen kept it (`keptAt`), it stays as it is and the new readings become a check of their own.
 */
export async function saveQuickCheck(
  store: CheckStore,
  record: CheckRecord,
  keptAt: string | undefined,
  unit: LengthUnit,
): Promise<SavedQuickCheck> {
  const found = await store.get(record.id);
  const before = found.ok ? found.value : null;
  if (before && sameReadings(before, record) && before.deletedAt === undefined) {
    return { stored: before, outcome: found };
  }
  const fresh = (of: CheckRecord): StoredCheck => ({
    ...storedFromRecord(of, { unit }),
    updatedAt: new Date().toISOString(),
  });
  if (before === null) {
    const stored = fresh(record);
    const outcome = await store.put(stored);
    return { stored: outcome.ok ? outcome.value : stored, outcome };
  }
  if (before.updatedAt === keptAt && before.deletedAt === undefined) {
    const outcome = await store.update(record.id, () => fresh(record));
    return { stored: outcome.ok ? outcome.value : fresh(record), outcome };
  }
  const stored = fresh({ ...record, id: newId() });
  const outcome = await store.put(stored);
  return { stored: outcome.ok ? outcome.value : stored, outcome };
}
