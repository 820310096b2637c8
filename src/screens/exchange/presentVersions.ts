import type { Outcome } from "../../physics/outcome.ts";
import { succeed } from "../../physics/outcome.ts";
import type { CheckRecord, PartialCheckRecord } from "../../records/check/checkRecord.ts";
import { newId, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { storedFromRecord } from "../../records/filling/storedFromRecord.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { isSame } from "../../storage/sameContent.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";

export interface PresentVersions {
  /** Checks on this phone with the id of the record, newest change first. */
  readonly versions: readonly StoredCheck[];
  /** The one whose record is the very same, if there is one. */
  readonly same: StoredCheck | null;
}

/** When the cautions of a check by hand were acknowledged is each phone's own, and makes no other version. */
function compared({ fullTravel, ...record }: PartialCheckRecord): unknown {
  return fullTravel ? { ...record, fullTravel: { ...fullTravel, acknowledged: null } } : record;
}

export async function presentVersions(
  store: CheckStore,
  record: CheckRecord,
): Promise<Outcome<PresentVersions>> {
  const list = await store.list();
  if (!list.ok) return list;
  const versions: StoredCheck[] = [];
  for (const listed of list.value) {
    if (listed.id !== record.id && listed.record.id !== record.id) continue;
    const whole = await store.get(listed.id);
    if (!whole.ok) return whole;
    if (whole.value !== null) versions.push(whole.value);
  }
  const sent = compared(record);
  const same = versions.find((stored) => isSame(compared(stored.record), sent)) ?? null;
  return succeed({ versions, same });
}

function received(record: CheckRecord, unit: LengthUnit): StoredCheck {
  return { ...storedFromRecord(record, { unit }), updatedAt: new Date().toISOString() };
}

/**
 * Keeps a check that came from elsewhere. Where its id is taken, also by a deleted check, it is kept beside
 * that one; its record stays as it came, id and all, so that both are known as versions of one check.
 */
export async function keepBeside(
  store: CheckStore,
  stored: StoredCheck,
): Promise<Outcome<StoredCheck>> {
  const added = await store.add(stored);
  if (!added.ok) return added;
  if (added.value) return succeed(stored);
  const beside = { ...stored, id: newId(), name: messages.received({ name: stored.name }) };
  const kept = await store.add(beside);
  return kept.ok ? succeed(beside) : kept;
}

export function keepReceived(
  store: CheckStore,
  record: CheckRecord,
  unit: LengthUnit,
): Promise<Outcome<StoredCheck>> {
  return keepBeside(store, received(record, unit));
}

/** Puts a received check in the place of one that is here, which goes to the deleted ones first. */
export async function replaceWithReceived(
  store: CheckStore,
  present: StoredCheck,
  record: CheckRecord,
  unit: LengthUnit,
): Promise<Outcome<StoredCheck>> {
  const current = await store.get(present.id);
  if (!current.ok) return current;
  const before = current.value ?? present;
  const { revision: _, ...content } = before;
  const aside = await store.add({
    ...content,
    id: newId(),
    name: messages.beforeItWasReplaced({ name: before.name }),
    deletedAt: new Date().toISOString(),
  });
  if (!aside.ok) return aside;
  return store.update(present.id, ({ id, name, revision }) => ({
    ...received(record, unit),
    id,
    name,
    ...(revision !== undefined && { revision }),
  }));
}
