import { type Outcome, succeed } from "../../physics/outcome.ts";
import { readCheckValue } from "../../records/check/readCheck.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { storedFromRecord } from "../../records/filling/storedFromRecord.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { MarkStore } from "../../storage/markStore.ts";
import * as messages from "../../words/compiled/screens/home.ts";

const records = import.meta.glob<unknown>("../../../demo-data/{checks,jobs}/*.json", {
  eager: true,
  import: "default",
});

/** The demo checks on this phone: those that are not there are added, deleted ones brought back. */
export async function addDemoChecks(store: CheckStore, unit: LengthUnit): Promise<Outcome<number>> {
  const deleted = await store.list("deleted");
  const gone = new Set(deleted.ok ? deleted.value.map(({ id }) => id) : []);
  let added = 0;
  const demo: StoredCheck[] = [];
  for (const value of Object.values(records)) {
    const read = readCheckValue(value, messages.demoCheck);
    if (!read.ok) return read;
    const stored = storedFromRecord(read.value, { unit });
    const outcome = gone.has(stored.id) ? await store.restore(stored.id) : await store.add(stored);
    if (!outcome.ok) return outcome;
    if (outcome.value === true) demo.push(stored);
    added += 1;
  }
  // They come again by their button, so nobody needs to save them.
  const marks = new MarkStore();
  await marks.markSafe(demo);
  marks.close();
  return succeed(added);
}
